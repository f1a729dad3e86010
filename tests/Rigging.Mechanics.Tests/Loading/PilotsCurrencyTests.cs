using CsCheck;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Loading;

public class PilotsCurrencyTests
{
    static readonly Aeroplane Aeroplane = new(Trainer.Airframe);
    static readonly PilotsCurrency Currency = new(Aeroplane.Reference);

    /// <summary>
    /// From the sums of the flight-point tests, done by hand: 0.1° of panel is worth about 0.9 °/s and ten litres about 0.68, so a
    /// tenth of a degree up on the right, which rolls it left, wants about 13 litres more on the right.
    /// </summary>
    [Fact]
    public void A_tenth_of_a_degree_is_worth_a_dozen_litres() =>
        Assert.InRange(Currency.LitresForPanel(0.1)!.Value, 11, 15);

    [Fact]
    public void Litres_for_a_panel_and_the_panel_for_those_litres_are_the_same_coin() => Gen.Double[-1, 1].Sample(deg =>
        Math.Abs(Currency.PanelForLitres(Currency.LitresForPanel(deg)!.Value) - deg) < 1e-12);

    [Fact]
    public void The_litres_that_null_it_leave_nothing()
    {
        var seen = 0.002 * Aeroplane.Reference.PanelIncidence;

        var litres = Currency.LitresThatNull(Aeroplane.Reference.RollTendencyDegPerS(seen))!.Value;
        var balanced = seen + Aeroplane.Reference.Of(Trainer.Aboard(77, 77, 25 - litres / 2, 25 + litres / 2));

        Assert.Equal(0, Aeroplane.Reference.RollTendencyDegPerS(balanced), 1e-10);
    }

    /// <summary>By hand: half a flat from neutral is 30°, so 1.8 mm·sin 30° = 0.9 mm over 880 mm = 0.0586° of one panel. The slope at neutral is π/3 of that: 0.0614.</summary>
    [Fact]
    public void Half_a_flat_is_worth_what_its_incidence_is_worth()
    {
        var eccentric = Eccentric.On(Trainer.Airframe).Value!;

        Assert.Equal(0.0614 * Currency.DegPerSPerPanelDeg, 0.5 * Currency.DegPerSPerFlat(eccentric, Angle.Zero), 0.002);
    }

    [Fact]
    public void Alone_on_the_left_it_rolls_left_and_both_up_it_does_not()
    {
        var tendencies = Currency.At(PilotsCurrency.CommonLoads(Trainer.Airframe, 77), riggedForDegPerS: 0.2);

        Assert.Equal(["solo left", "solo right", "all seats"], tendencies.Select(t => t.Name));
        Assert.True(tendencies[0].DegPerS < 0);
        Assert.True(tendencies[1].DegPerS > 0.2);
        Assert.Equal(0.2, tendencies[2].DegPerS, 1e-12);
        Assert.Equal(-tendencies[0].FromRiggedForDegPerS, tendencies[1].FromRiggedForDegPerS, 1e-12);
    }

    /// <summary>A person who weighs what the tendency is worth, in the seat on the light side.</summary>
    [Fact]
    public void A_whole_person_in_the_right_seat_nulls_what_a_missing_one_makes()
    {
        var right = Trainer.Airframe.Seats.Single(seat => seat.Name == "right");
        var solo = Currency.At(PilotsCurrency.CommonLoads(Trainer.Airframe, 77), 0).Single(t => t.Name == "solo left").DegPerS;

        Assert.Equal(1, Currency.PersonsThatNull(solo, right, 77)!.Value, 1e-12);
    }

    [Fact]
    public void Without_tanks_beside_the_centreline_no_fuel_nulls_anything()
    {
        var middle = Trainer.Airframe with { Tanks = [new("middle", 0, 60)], Reference = Trainer.Airframe.Reference with { Load = new(new Dictionary<string, double>(), new Dictionary<string, double> { ["middle"] = 30 }) } };

        Assert.Null(new PilotsCurrency(new Aeroplane(middle).Reference).LitresThatNull(1));
    }

    /// <summary>By hand: 30 kg · 9.80665 · 0.4 m = 117.68 N m.</summary>
    [Fact]
    public void Baggage_on_the_right_weighs_the_right_wing_down()
    {
        var airframe = Trainer.Airframe with { Baggage = [new("rear shelf", 0.4)] };
        var load = Trainer.TwoUp with { BaggageKg = new Dictionary<string, double> { ["rear shelf"] = 30 } };

        Assert.Equal(117.68, LateralLoad.RollingMomentNm(airframe, load), 0.01);
    }

    /// <summary>By hand: 4 L either side at 1.3 m: 4·0.72·9.80665·1.3·√2 = 51.9 N m, worth about 8/√2 L of difference.</summary>
    [Fact]
    public void Gauges_good_to_four_litres_leave_the_moment_uncertain_by_so_much() =>
        Assert.Equal(51.92, LateralLoad.MomentSdNm(Trainer.Airframe, Trainer.TwoUp, tankSdL: 4), 0.02);

    [Fact]
    public void A_wrong_density_matters_only_with_uneven_fuel()
    {
        Assert.Equal(0, LateralLoad.MomentSdNm(Trainer.Airframe, Trainer.TwoUp, tankSdL: 0, sdKgPerL: 0.01), 1e-9);
        Assert.Equal(0.01 * 9.80665 * 10 * 1.3, LateralLoad.MomentSdNm(Trainer.Airframe, Trainer.Aboard(77, 77, 25, 35), 0, 0.01), 1e-6);
    }
}
