using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// What to look at next: for each check or test point that can be done, the expected loss of entropy over which cause is
/// behind what was seen, in bits, best value for the minutes first. Where the values are close the trade's order decides. Never a point
/// outside the airframe's speeds, nor above flap speed with flap, nor a fuel test that the selector does not allow.
/// </summary>
static class NextTests
{
    const int Most = 8;
    const double WorthDoingBits = 0.01;
    const string Flight = "test-point:";
    const string DamageInspection = "ground-check:damage-inspection";

    /// <summary>
    /// Values for the minutes within this share of one another count as alike: minutes are good to a third at best (judgement, no source).
    /// </summary>
    const double AboutAlike = 1.0 / 3;

    /// <summary>Percent of power at which a slipstream shows, one away from the reference.</summary>
    static readonly double[] LittleAndMuch = [40, 90];

    static readonly BankAfter TenSeconds = new(10, 0) { Method = ReadingMethod.StopwatchHorizon };

    public static IReadOnlyList<NextTest> For(Evidence evidence)
    {
        var tests = new Candidates(evidence).InTheTradesOrder().ToList();
        var ordered = new List<NextTest>();
        // What may be broken is looked at before anything else, and not flown.
        if (evidence.DamageDoubt.Count > 0)
        {
            ordered.AddRange(tests.Where(test => test.Test == DamageInspection));
            tests.RemoveAll(test => test.Test == DamageInspection || test.Test.StartsWith(Flight, StringComparison.Ordinal));
        }
        tests.RemoveAll(test => test.Bits < WorthDoingBits);
        while (tests.Count > 0 && ordered.Count < Most)
        {
            var best = tests.Max(test => test.Bits / test.Minutes);
            var next = tests.First(test => test.Bits / test.Minutes >= (1 - AboutAlike) * best);
            ordered.Add(next);
            // One point of a manoeuvre is enough to see what it tells; the others are worth asking for afterwards.
            tests.RemoveAll(test => Kind(test) == Kind(next));
        }
        return ordered;
    }

    /// <summary>The check, or the manoeuvre without its speed, flap and power.</summary>
    static string Kind(NextTest test) => test.Test.Split('@')[0];

    sealed class Candidates(Evidence evidence)
    {
        readonly Airframe airframe = evidence.Aeroplane.Airframe;

        /// <summary>
        /// Instrument, loading, history, yaw, flaps, ailerons, contour; then what has to be flown, yaw before roll; the survey last. What can be
        /// looked at on the ground comes before another flight.
        /// </summary>
        public IEnumerable<NextTest> InTheTradesOrder() =>
            Checks(GroundCheckKind.BallOffset)
                .Append(Fuel())
                .Concat(Checks(GroundCheckKind.DamageInspection))
                .Concat(airframe.Rudder is null ? [] : Checks(GroundCheckKind.RudderTab))
                .Concat(Checks(GroundCheckKind.FlapDifference))
                .Concat(airframe.Ailerons.FixedTab is null ? [] : Checks(GroundCheckKind.AileronTab))
                .Concat(Checks(GroundCheckKind.AileronNeutralOffset, GroundCheckKind.AileronFloat, GroundCheckKind.ControlFriction, GroundCheckKind.ContourSurvey))
                .Concat(Flown(Manoeuvre.HoldLevel, new BallReading(0)))
                .Concat(Flown(Manoeuvre.ReleaseAll, TenSeconds))
                .Concat(Flown(Manoeuvre.HoldNeutral, TenSeconds))
                .Concat(FlapLowered())
                .Concat(FromBothSides())
                .Concat(Speeds().SelectMany(casKt => Flown(Manoeuvre.ReleaseWheel, TenSeconds, casKt)))
                .Concat(Powers().SelectMany(percent => Flown(Manoeuvre.ReleaseWheel, TenSeconds, percent: percent)))
                .Concat(Balanced())
                .Concat(Checks(GroundCheckKind.TipIncidenceDifference, GroundCheckKind.PanelIncidenceDifference));

        NextTest Fuel() => new("measure:fuel-and-seats", OfAmplitude(Cause.FuelAndLoading, evidence.Practice.FuelMeasured.Sd), evidence.Practice.FuelMeasured.Minutes);

        IEnumerable<NextTest> Balanced() => airframe.FuelSelector is FuelSelector.LeftRight or FuelSelector.LeftRightBoth
            ? Flown(Manoeuvre.BalanceFuel, new FuelDifference(0))
            : [];

        IEnumerable<NextTest> Checks(params GroundCheckKind[] kinds)
        {
            foreach (var check in kinds.Select(evidence.Practice.Check).OfType<CheckFigure>())
                if (PriorOdds.Shows(check.Check) is { } looked)
                {
                    if (!Looked(check))
                        yield return Named(check, OfLook(looked, check));
                }
                else if (check is { Sd: { } sd } && GroundEvidence.Measures(check.Check) is var cause)
                    yield return Named(check, Math.Max(OfAmplitude(cause, sd), Looked(check) ? 0 : OfLook(cause, check)));
        }

        /// <summary>Who looked once has looked.</summary>
        bool Looked(CheckFigure check) => evidence.Request.GroundChecks.Any(done => done.Kind == check.Check);

        static NextTest Named(CheckFigure check, double bits) => new($"ground-check:{Wire.Word(check.Check)}", bits, check.Minutes);

        double OfAmplitude(Cause cause, double sd) => Rounded(evidence.Diagnosis.Bits(0, GroundEvidence.Gains(cause, evidence.Aeroplane), (_, _) => sd * sd));

        double OfLook(Cause cause, CheckFigure look) => Rounded(evidence.Diagnosis.BitsOfLook(cause, look.Finds, look.FalseAlarm));

        /// <summary>The same point twice, the wheel last moved to the left and to the right: what friction needs to show itself.</summary>
        IEnumerable<NextTest> FromBothSides() =>
            from left in Flown(Manoeuvre.ReleaseWheel, TenSeconds, lastInput: Side.Left)
            from right in Flown(Manoeuvre.ReleaseWheel, TenSeconds, lastInput: Side.Right)
            select new NextTest($"{left.Test},last-input-left-and-right", (left.Bits + right.Bits) / 2, left.Minutes + right.Minutes);

        IEnumerable<NextTest> FlapLowered()
        {
            const double deg = 10;
            if (airframe.SpeedsKt is not { } limits)
                return [];
            var casKt = 5 * Math.Floor(0.9 * limits.FlapLimit / 5);
            return casKt >= 1.3 * limits.StallClean ? Flown(Manoeuvre.ReleaseWheel, TenSeconds, casKt, flapDeg: deg) : [];
        }

        /// <summary>A slow and a fast one well inside the limits, in fives; only the reference where no limits are on file.</summary>
        IEnumerable<double> Speeds()
        {
            if (airframe.SpeedsKt is not { } limits)
                return [airframe.Reference.CasKt];
            var slow = 5 * Math.Ceiling(1.5 * limits.StallClean / 5);
            var fast = 5 * Math.Floor(0.97 * limits.MaxStructuralCruise / 5);
            return slow < fast ? [slow, fast] : [];
        }

        IEnumerable<double> Powers() => LittleAndMuch.Where(percent => Math.Abs(percent - airframe.Reference.PowerPercent) > 15);

        IEnumerable<NextTest> Flown(Manoeuvre manoeuvre, Reading reading, double? casKt = null, double flapDeg = 0, double? percent = null, Side? lastInput = null)
        {
            var reference = airframe.Reference;
            var speed = casKt ?? reference.CasKt;
            if (airframe.SpeedsKt is { } limits && (speed < limits.StallClean || speed > limits.MaxStructuralCruise))
                yield break;
            var point = new TestPoint(manoeuvre, speed, reference.PressureAltitudeFt, TestPoint.StandardOatC(reference.PressureAltitudeFt),
                percent, flapDeg, reference.Load, AirState.Smooth, lastInput, null, [reading]);
            if (evidence.Observe(point, evidence.Aeroplane.At(point), reading) is not { } observation || !Evidence.IsNumber(observation))
                yield break;
            var bits = evidence.Diagnosis.Bits(observation.Known, observation.Gains, (explanation, mean) => observation.Variance + evidence.ModelVariance(observation, explanation, mean));
            FormattableString where = $"{Flight}{Wire.Word(manoeuvre)}@{speed:0}kt{Also("flap", flapDeg == 0 ? null : flapDeg)}{Also("power", percent)}";
            yield return new(
                where.ToString(CultureInfo.InvariantCulture),
                Rounded(bits),
                (manoeuvre == Manoeuvre.BalanceFuel ? evidence.Practice.FuelBalanced : evidence.Practice.EvaluationPoint).Minutes);
        }

        static string Also(string what, double? value) => value is { } v ? string.Create(CultureInfo.InvariantCulture, $",{what}{v:0}") : "";
    }

    static double Rounded(double bits) => Math.Round(bits, 3);
}
