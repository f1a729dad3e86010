using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Evidence;
using Rigging.Simulation.Motion;

namespace Rigging.Simulation;

/// <summary>The flights and checks made on one aeroplane, by how much evidence there is to be.</summary>
sealed class Campaign
{
    readonly AirframeFile file;
    readonly Chance chance;
    readonly Load load;
    readonly double altitude;
    readonly double warm;
    readonly string air;
    readonly bool stiff;

    public Campaign(Aeroplane aeroplane, Pilot pilot, Chance chance)
    {
        (file, this.chance) = (aeroplane.File, chance);
        (Log, Bench) = (new(aeroplane, pilot, chance), new(aeroplane, chance));
        stiff = aeroplane.Faults[Faults.Friction] > 0;
        altitude = chance.Pick(1500.0, 2500, 3000, 4000, 5000);
        warm = chance.Pick(-10.0, -5, 0, 0, 5, 12);
        air = chance.Once(0.75) ? "smooth" : "light";
        load = Flown();
    }

    public Logbook Log { get; }

    public Bench Bench { get; }

    public void Make(string evidence, bool lookForDamage)
    {
        switch (evidence)
        {
            case "vague":
                Log.Describe(Point(chance.Once(0.5) ? TestPoint.ReleaseWheel : TestPoint.ReleaseAll, file.ReferenceKt));
                break;
            case "two-point":
                Release(Slow);
                Release(Fast);
                if (chance.Once(0.5))
                    Bench.Flaps();
                break;
            case "check-flight":
                Release(Slow);
                Release(file.ReferenceKt);
                Release(Fast);
                break;
            default:
                Fly();
                if (evidence is "full" or "no-survey")
                    CheapChecks(lookForDamage);
                if (evidence == "full")
                    Survey();
                break;
        }
    }

    double Slow => Math.Round(Math.Max(1.4 * file.StallKt, file.ReferenceKt - 22));

    double Fast => Math.Round(Math.Min(file.CruiseLimitKt, file.ReferenceKt + 12));

    void Fly()
    {
        foreach (var speed in (double[])[Slow, Fast])
            foreach (var (input, repeat) in ((int, int?)[])(stiff || chance.Once(0.5) ? [(-1, 1), (1, 2)] : [(0, null)]))
                Release(speed, input, repeat);
        Log.Fly(Point(TestPoint.HoldLevel, file.ReferenceKt), new("ball"), new("heading-rate"), new("wheel-angle"));
        Bank(Point(TestPoint.HoldNeutral, file.ReferenceKt));
        Bank(Point(TestPoint.ReleaseAll, file.ReferenceKt) with { LastInput = stiff ? (int)chance.Sign() : 0 }, new Quantity("heading-change", 8));
        if (chance.Once(0.5))
            Log.Fly(Point(TestPoint.HoldStraight, file.ReferenceKt), new("wheel-angle"), new("wheel-force"));
        // Full power slowly, and little power at the same speed: the stream's doing shows as their difference.
        Log.Fly(Point(TestPoint.HoldLevel, Slow) with { Power = 1 }, new("ball"), new("heading-rate"));
        Log.Fly(Point(TestPoint.HoldLevel, Slow) with { Power = 0.25 }, new("ball"), new("heading-rate"));
        if (chance.Once(0.3))
            Log.Fly(Point(TestPoint.BalanceFuel, file.ReferenceKt), new Quantity("fuel-difference"));
    }

    void CheapChecks(bool lookForDamage)
    {
        Bench.Flaps();
        Bench.AileronFloat();
        Bench.AileronNeutral();
        Bench.Ball();
        if (lookForDamage)
            Bench.DamageInspection();
        Bench.Friction();
    }

    void Survey()
    {
        Bench.Incidence(levelled: chance.Once(0.6));
        Bench.ContourSurvey();
    }

    void Release(double speed, int input = 0, int? repeat = null) =>
        Bank(Point(TestPoint.ReleaseWheel, speed) with { LastInput = input, Repeat = repeat });

    /// <summary>Bank after ten seconds; after five where ten would be too much, or the time to twenty degrees where even that is.</summary>
    void Bank(TestPoint point, params IReadOnlyList<Quantity> others)
    {
        var comfortable = ((double[])[10, 5]).FirstOrDefault(seconds => Math.Abs(Log.Expects(point, new("bank-after", seconds))) <= 30);
        if (comfortable > 0)
            Log.Fly(point, [new("bank-after", comfortable), .. others]);
        else
            Log.Fly(point, new Quantity("time-to-bank", 20 * Math.Sign(Log.Expects(point, new("bank-after", 5)))));
    }

    TestPoint Point(string manoeuvre, double speed) =>
        new(manoeuvre, speed, altitude, Flow.StandardC(altitude) + warm, file.ReferencePower, load) { Air = air };

    /// <summary>Mostly the load it is rigged for; else one person aboard, or tanks that differ by a known amount.</summary>
    Load Flown()
    {
        var rigged = Load.Of(file.ReferenceLoad);
        if (chance.Once(0.6))
            return rigged;
        var alone = chance.Once(0.5);
        var litres = chance.Pick(0.0, 5, 10) * chance.Sign();
        return new(
            alone ? rigged.SeatsKg.Take(1).ToDictionary() : rigged.SeatsKg,
            rigged.FuelL.ToDictionary(tank => tank.Key, tank => tank.Value + Math.Sign(file.Tanks[tank.Key]) * litres / 2));
    }
}
