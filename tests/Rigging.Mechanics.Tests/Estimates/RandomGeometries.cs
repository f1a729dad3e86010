using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Estimates;

namespace Rigging.Mechanics.Tests.Estimates;

/// <summary>
/// Aeroplanes that a school might have, by their geometry alone: high, mid and low wings, with and without a strut, two to six seats. What is drawn
/// is in the proportions of light aeroplanes; common practice, no source.
/// </summary>
static class RandomGeometries
{
    public static IEnumerable<Airframe> Of(int count, int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < count; i++)
            yield return One(i, random);
    }

    static Airframe One(int index, Random random)
    {
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        bool Once(double probability) => random.NextDouble() < probability;

        var seats = random.Next(2, 7);
        var massKg = Between(220, 300) * seats + Between(-60, 180);
        var areaM2 = massKg / Between(45, 85);
        var spanM = Math.Sqrt(Between(5.5, 9) * areaM2);
        WingPosition position = (WingPosition)(index % 3);
        var bracing = position == WingPosition.High && Once(0.7)
            ? new[] { Bracing.SingleStrutAtFrontSpar, Bracing.StrutAtEachSpar }[random.Next(2)] : Bracing.Cantilever;
        var taper = Between(0.45, 1);
        var rootM = 2 * areaM2 / (spanM * (1 + taper));
        var dihedralDeg = position switch { WingPosition.High => Between(0, 2.5), WingPosition.Mid => Between(2, 5), _ => Between(4, 7.5) };
        var washoutDeg = Between(0, 3);
        var finM2 = areaM2 * Between(0.07, 0.12);
        var finArmM = spanM * Between(0.4, 0.52);
        var tankArmM = spanM * Between(0.1, 0.3);
        var width = Between(0.6, 1.25);
        Seat[] places = [.. Enumerable.Range(0, seats).Select(seat => new Seat($"{(seat % 2 == 0 ? "left" : "right")} {seat / 2 + 1}", (seat % 2 == 0 ? -0.26 : 0.26) * width * 1.1))];
        var stallKt = Math.Sqrt(massKg * 9.80665 / (0.5 * 1.225 * areaM2 * Between(1.4, 1.7))) * 3600 / 1852;
        var cruiseKt = stallKt * Between(1.8, 2.3);
        var tankL = Between(35, 45) * seats / 2;
        return GeometryEstimates.Complete(new(
            $"random-{index}", "drawn at random", null,
            new(spanM, dihedralDeg, bracing,
                [new(0, rootM, 2, 6), new(spanM / 2, taper * rootM, 2 - washoutDeg, 6)], 0.55 * rootM, 0.06 * spanM,
                Once(0.7) ? position : null),
            new(1.8, 6, 90, BushingIn.FuselageFitting, new(Spanwise.Inboard, Spanwise.Inboard), null, "drawn at random"),
            new(spanM / 2 * Between(0.5, 0.62), spanM / 2 * Between(0.92, 0.99), Between(0.18, 0.28), new(Side.Right, 0.35), Between(2, 5), Between(2, 8)),
            new(spanM / 2 * 0.12, spanM / 2 * 0.49, Between(0.2, 0.3)),
            new(0.3, finM2 * Between(0.3, 0.5)),
            new(massKg, double.NaN, double.NaN, 0),
            new(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, 0, 0),
            [new("left", -tankArmM, tankL), new("right", tankArmM, tankL)],
            FuelSelector.LeftRightBoth, places, Between(3, 5),
            new(stallKt, 1.7 * stallKt, 1.75 * stallKt, cruiseKt * 1.1, cruiseKt * 1.5),
            new(cruiseKt * 0.95, Between(0, 8000), 65, new(
                places.Take(2).ToDictionary(seat => seat.Name, _ => 77.0), new Dictionary<string, double> { ["left"] = tankL / 2, ["right"] = tankL / 2 })),
            new(0.5, 0.5, 0.5),
            Fin: new(finM2, finArmM, spanM * Between(0.05, 0.1), Between(1.8, 3.2)),
            Fuselage: Once(0.6) ? new(spanM * Between(0.68, 0.85), Once(0.8) ? spanM * Between(0.11, 0.15) : null, width) : null,
            Propeller: Once(0.5) ? new(Between(1.6, 2), random.Next(2, 4), spanM * Between(0.15, 0.25)) : null));
    }
}
