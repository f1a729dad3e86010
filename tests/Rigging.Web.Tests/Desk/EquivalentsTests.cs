using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;
using Rigging.Web.Assessment;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

/// <summary>No more is said of anything than the aeroplane holds.</summary>
public class EquivalentsTests
{
    static readonly Airframe Trainer = School.Airframe.Read();

    /// <summary>Light aeroplanes of all kinds: small tanks near the fuselage and large ones far out, seats near and far, coarse eccentrics and fine.</summary>
    static readonly Gen<Airframe> Airframes = Gen.Select(
        Gen.Double[0.7, 1.5], Gen.Double[4, 120], Gen.Double[0.05, 4], Gen.Double[0.05, 0.7],
        Gen.Double[0.1, 4], Gen.Double[5, 180], Gen.Double[0.3, 3],
        (span, capacityL, tankM, seatM, throwMm, stopDeg, dihedral) => Trainer with
        {
            Wing = Trainer.Wing with
            {
                SpanM = Trainer.Wing.SpanM * span,
                Stations = [.. Trainer.Wing.Stations.Select(station => station with { YM = station.YM * span })],
            },
            Tanks = [new("left", -tankM, capacityL), new("right", tankM, capacityL)],
            Seats = [new("left", -seatM), new("right", seatM)],
            Eccentric = Trainer.Eccentric! with { ThrowMm = throwMm, MaxAngleDeg = stopDeg },
            Derivatives = Trainer.Derivatives with { ClBeta = Trainer.Derivatives.ClBeta * dihedral },
        });

    /// <summary>From what nobody notices to what only a broken file leads to, either way.</summary>
    static readonly Gen<double> Tendencies =
        Gen.Select(Gen.Double[-3, 16], Gen.Bool, (power, left) => (left ? -1 : 1) * Math.Pow(10, power));

    static double[] Numbers(string said, string unit) =>
        [.. Regex.Matches(said, $@"([\d.]+)\s*{unit}").Select(match => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture))];

    /// <summary>0 where none are said.</summary>
    static double Flats(string said)
    {
        var match = Regex.Match(said, "about ([0-9]*)([⅛¼⅜½⅝¾⅞]?) flats? turned");
        var eighths = match.Groups[2].Value is { Length: 1 } part ? 1 + "⅛¼⅜½⅝¾⅞".IndexOf(part, StringComparison.Ordinal) : 0;
        return (match.Groups[1].Value is { Length: > 0 } whole ? double.Parse(whole, CultureInfo.InvariantCulture) : 0) + eighths / 8.0;
    }

    [Fact]
    public void Never_more_litres_than_the_tanks_hold_people_than_a_seat_or_flats_than_the_stops_allow() =>
        Gen.Select(Airframes, Tendencies).Sample((airframe, degPerS) =>
        {
            var said = new Equivalents(new Aeroplane(airframe)).Balance(degPerS) ?? "";
            Assert.All(Numbers(said, @"L \("), litres => Assert.InRange(litres, 0, airframe.Tanks[0].CapacityL));
            Assert.All(Numbers(said, "US"), gallons => Assert.InRange(gallons, 0, airframe.Tanks[0].CapacityL / 3.785411784 + 0.05));
            Assert.All(Numbers(said, "kg"), kg => Assert.InRange(kg, 0, Equivalents.PersonKg));
            Assert.All(Numbers(said, "%"), percent => Assert.InRange(percent, 0, 100));
            Assert.InRange(Flats(said), 0, Math.Min(airframe.Eccentric!.MaxAngleDeg, 90) / 60);
        }, iter: 300);

    [Fact]
    public void What_the_aeroplane_holds_is_still_said_in_numbers() =>
        Gen.Select(Airframes, Gen.Double[0.06, 4], Gen.Bool).Sample((airframe, rate, left) =>
        {
            var (aeroplane, degPerS) = (new Aeroplane(airframe), left ? -rate : rate);
            var (currency, said) = (new PilotsCurrency(aeroplane.Reference), new Equivalents(aeroplane).Balance(degPerS)!);
            var light = airframe.Seats.Single(seat => seat.ArmM > 0 == left);

            var litres = Math.Abs(currency.LitresThatNull(degPerS)!.Value);
            Assert.Equal(litres <= airframe.Tanks[0].CapacityL, Numbers(said, @"L \(").Length == 1);
            Assert.Equal(currency.PersonsThatNull(degPerS, light, Equivalents.PersonKg) <= 1, Numbers(said, "kg").Length == 1);
            Assert.Contains(left ? "right" : "left", said, StringComparison.Ordinal);
            var eccentric = Eccentric.On(airframe).Value!;
            var most = eccentric.IncidenceAt(UnitsNet.Angle.FromDegrees(Math.Min(airframe.Eccentric!.MaxAngleDeg, 90)));
            var reached = Math.Abs(currency.PanelDegThatNulls(degPerS)) <= most.Degrees;
            Assert.Equal(!reached, said.Contains("more flats than the stops allow", StringComparison.Ordinal));
        }, iter: 300);

    [Fact]
    public void Beyond_all_of_them_it_says_so()
    {
        var said = new Equivalents(new Aeroplane(Trainer)).Of(-1e13);

        Assert.Equal(
            "It would stay level with more fuel on the right than the tanks hold, or more than a person in the right seat, "
            + "or more flats than the stops allow turned at one wing.", said);
    }

    [Theory, InlineData(double.NaN), InlineData(double.PositiveInfinity), InlineData(0.04)]
    public void Of_what_is_no_number_or_not_noticed_nothing_is_said(double degPerS) =>
        Assert.Null(new Equivalents(new Aeroplane(Trainer)).Balance(degPerS));

    /// <summary>By hand: a flat of 60° from neutral lowers the spar by sin 60° = 0.866 of the throw, not by the 1.047 that its slope there makes.</summary>
    [Fact]
    public void Flats_are_as_many_as_the_head_is_turned_and_not_as_its_slope_at_neutral_has_it()
    {
        var (aeroplane, eccentric) = (new Aeroplane(Trainer), Eccentric.On(Trainer).Value!);
        var currency = new PilotsCurrency(aeroplane.Reference);

        var tendency = currency.DegPerSPerPanelDeg * eccentric.IncidenceAt(eccentric.PerFlat).Degrees;

        Assert.Equal(1, currency.FlatsThatNull(tendency, eccentric)!.Value, 1e-9);
    }

    [Fact]
    public void Tanks_too_small_for_ten_litres_are_not_priced_by_ten()
    {
        var small = Trainer with { Tanks = [new("left", -1, 6), new("right", 1, 6)] };

        Assert.DoesNotContain(new Equivalents(new Aeroplane(small)).Unit(), line => line.StartsWith("Ten litres", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Cause.FuelAndLoading, 83, "83\u202FL more on the right than reported")]
    [InlineData(Cause.FuelAndLoading, -85, "more fuel on the left than the tanks hold")]
    [InlineData(Cause.FuelAndLoading, 0, "as reported")]
    [InlineData(Cause.AileronFloat, -1e6, "more than 45° toward left wing down")]
    [InlineData(Cause.PanelIncidenceDifference, 99, "right panel more than 45° more incidence")]
    [InlineData(Cause.ContourOrFairing, 1e9, "a moment worth more than 90\u202F°/s right wing down")]
    public void A_cause_is_no_larger_than_it_could_be_measured(Cause cause, double amplitude, string words) =>
        Assert.Equal(words, AssessmentWords.Amplitude(cause, amplitude, new(new(Trainer))));

    /// <summary>Ten kilograms more in the left seat drop the left wing on every aeroplane, and by what they are worth.</summary>
    [Fact]
    public void A_heavier_side_is_the_side_that_goes_down_and_no_roll_is_said_only_of_what_nobody_notices() =>
        Airframes.Sample(airframe =>
        {
            var aeroplane = new Aeroplane(airframe);
            var (lines, currency) = (new Equivalents(aeroplane).Unit(), new PilotsCurrency(aeroplane.Reference));
            foreach (var seat in airframe.Seats)
            {
                var line = lines.Single(line => line.StartsWith($"Ten kilograms more in the {seat.Name} seat", StringComparison.Ordinal));
                var worth = 10 * currency.DegPerSPerKgIn(seat);
                Assert.EndsWith(Math.Abs(worth) < 0.005 ? "no roll." : $"{Directions.RollRate(worth)}.", line, StringComparison.Ordinal);
                var side = seat.ArmM < 0 ? "left wing down" : "right wing down";
                Assert.True(Math.Abs(worth) < 0.005 || line.Contains(side, StringComparison.Ordinal), line);
            }
        }, iter: 200);
}
