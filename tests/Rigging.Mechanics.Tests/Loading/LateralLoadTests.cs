using CsCheck;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;

namespace Rigging.Mechanics.Tests.Loading;

public class LateralLoadTests
{
    /// <summary>By hand: 10 L · 0.72 kg/L · 9.80665 m/s² · 1.30 m = 91.79 N m.</summary>
    [Fact]
    public void Ten_litres_more_in_the_right_tank_weigh_the_right_wing_down() =>
        Assert.Equal(91.79, LateralLoad.RollingMomentNm(Trainer.Airframe, Trainer.Aboard(77, 77, 25, 35)), 0.01);

    /// <summary>By hand: 80 kg · 9.80665 · 0.30 m = 235.4 N m to the left.</summary>
    [Fact]
    public void A_pilot_alone_on_the_left_weighs_the_left_wing_down() =>
        Assert.Equal(-235.36, LateralLoad.RollingMomentNm(Trainer.Airframe, Trainer.Aboard(80, 0, 25, 25)), 0.01);

    /// <summary>
    /// Published (encyclopaedia mirror quoting CAN 2-3 M82 grades): aviation gasoline at −40 °C weighs 0.769 kg/L. The
    /// density that was reported is used, not the usual one.
    /// </summary>
    [Fact]
    public void Cold_fuel_weighs_more()
    {
        var usual = Trainer.Aboard(77, 77, 10, 40);
        var cold = usual with { FuelKgPerL = 0.769 };

        Assert.Equal(0.769 / 0.72,
            LateralLoad.RollingMomentNm(Trainer.Airframe, cold) / LateralLoad.RollingMomentNm(Trainer.Airframe, usual), 9);
    }

    static readonly Gen<Load> Loads = Gen.Select(Gen.Double[0, 120], Gen.Double[0, 120], Gen.Double[0, 42], Gen.Double[0, 42])
        .Select((a, b, c, d) => Trainer.Aboard(a, b, c, d));

    [Fact]
    public void Changing_seats_and_tanks_over_turns_the_moment_round() => Loads.Sample(load =>
    {
        var swapped = Trainer.Aboard(load.SeatsKg["right"], load.SeatsKg["left"], load.FuelL["right"], load.FuelL["left"]);
        return Math.Abs(LateralLoad.RollingMomentNm(Trainer.Airframe, load) + LateralLoad.RollingMomentNm(Trainer.Airframe, swapped)) < 1e-9;
    });

    [Fact]
    public void The_moment_of_a_litre_times_the_difference_is_the_moment_of_the_fuel() => Loads.Sample(load =>
    {
        var fuelOnly = load with { SeatsKg = new Dictionary<string, double>() };
        var difference = LateralLoad.FuelDifferenceL(Trainer.Airframe, load);
        return Math.Abs(LateralLoad.RollingMomentNm(Trainer.Airframe, fuelOnly)
            - difference * LateralLoad.MomentPerLitreNm(Trainer.Airframe, load.FuelKgPerL)) < 1e-9;
    });
}
