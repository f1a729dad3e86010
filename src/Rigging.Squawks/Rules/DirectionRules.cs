using Rigging.Mechanics.Adjusters;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using UnitsNet;

namespace Rigging.Squawks.Rules;

/// <summary>Direction is proved by a measurement that can see the move, compared with what the plan and the settings on record say.</summary>
/// <remarks>
/// A tool sees a move of at least two of its steps. A reading may lie from what was to be expected by the root of the sum of the squares of: two
/// readings of half a step each, how closely the setting is read, and a tenth for the place of the tool and the figures on file (common practice, no source).
/// </remarks>
public static class DirectionRules
{
    const double SeesSteps = 2, PlaceAndFile = 0.1, MmPerInch = 25.4;

    /// <summary>What was agreed on that has an edge to be measured.</summary>
    public static IEnumerable<PlannedMove> ToProve(SquawkState state) => (state.Correction?.Moves ?? []).Where(move => move.Control.IsEccentric() || move.Control.StandsAtANumber());

    /// <summary>The field of one measurement: the same in forms and refusals.</summary>
    public static string Field(Control control, string what) => $"movement{control}.{what}";

    internal static IEnumerable<BrokenRule> Of(WorkDone done, SquawkState state, Facts facts)
    {
        foreach (var twice in (done.Movements ?? []).GroupBy(measured => measured.Control).Where(same => same.Count() > 1))
            yield return new("named-twice", $"The movement of the {Words.Of(twice.Key)} is given more than once.", "movements");
        foreach (var move in ToProve(state).DistinctBy(move => move.Control))
            if (!LeftAsFound(move.Control, done, state))
                foreach (var rule in Of(move, (done.Movements ?? []).FirstOrDefault(measured => measured.Control == move.Control), done, state, facts)) yield return rule;
    }

    /// <summary>What speaks against the measurement of one move; empty when it proves it.</summary>
    /// <param name="done">As far as it is written; null before anything is recorded as left: then the plan alone is compared with.</param>
    public static IReadOnlyList<BrokenRule> Of(PlannedMove move, MovementMeasured? measured, WorkDone? done, SquawkState state, Facts facts)
    {
        ArgumentNullException.ThrowIfNull(move);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(facts);
        var name = Words.Of(move.Control);
        BrokenRule Rule(string code, string sentence, string what) => new(code, sentence, Field(move.Control, what));
        if (measured is null)
            return [Rule("direction-not-proved", $"Nothing measured says which way the {name} moved its {EdgeOf(move.Control)}: give how far, which way, and with which tool.", "amount")];

        Seen[] ways = move.Control == Control.RudderTab ? [Seen.Left, Seen.Right] : [Seen.Down, Seen.Up];
        if (measured.Way == Seen.Still) return [Rule("did-not-move", $"The {EdgeOf(move.Control)} did not move: the {name} has not done what was planned. Find out why.", "way")];
        if (!ways.Contains(measured.Way)) return [Rule("not-a-choice", $"Say which way the {EdgeOf(move.Control)} moved: {Words.Of(ways[0])} or {Words.Of(ways[1])}.", "way")];
        if (!(measured.Amount > 0 && measured.Amount <= Most(measured.Unit)))
            return [Rule("value-out-of-range", $"A movement of {Read(measured.Amount, measured.Unit)} cannot be: wanted more than 0, at most {Read(Most(measured.Unit), measured.Unit)}.", "amount")];
        if (measured.Aft is { } aft && (measured.Unit == MovementUnit.Degree || !(aft > 0 && aft <= 20 * Most(measured.Unit))))
            return [Rule("value-out-of-range", "The distance behind which it turns is more than nothing, and of an angle there is none.", "aft")];

        foreach (var expected in (EdgeMove?[])[Expected(move, null, state, facts), Expected(move, done, state, facts)])
            if (expected is { Way: not 0 } && expected.Way != Sign(measured.Way))
                return [Rule("moved-the-wrong-way", $"The {SeenAt(measured)} was measured to move {Words.Of(measured.Way)}; the {name} was to move it {Words.Of(ways[expected.Way > 0 ? 0 : 1])}. Stop: turn it back to where it was found, and find out why before anything else is moved.", "way")];

        List<BrokenRule> broken = [];
        if (!facts.Tools.TryGetValue(measured.Tool, out var tool)) return [ToolRules.Unknown(Field(move.Control, "tool"))];
        if (ToolRules.Calibration(tool, done?.CompletedOn ?? facts.Today, "tool-out-of-calibration", Field(move.Control, "tool")) is { } lapsed)
            broken.Add(lapsed);
        if (StepOf(tool, measured.Unit) is not { } step)
            broken.Add(Rule("tool-scale-missing", tool.Scale is null
                ? $"{tool.Code} has no smallest step on file, so nobody knows what it can see. The maintenance office can enter it."
                : $"{tool.Code} is read in {Words.Of(tool.Scale.Unit)}, not in {Words.Of(measured.Unit)}.", "tool"));
        else
        {
            var foreseen = ExpectedSize(move, measured, done, state, facts);
            var size = foreseen ?? measured.Amount;
            if (size < SeesSteps * step)
                broken.Add(Rule("tool-too-coarse", $"{tool.Code} shows steps of {Read(step, measured.Unit)}, and the move is {Rounded(size, measured.Unit)}: it must be at least two steps. Use a dial indicator at the rear spar or the trailing edge, or another tool that sees it.", "tool"));
            if (measured.Unit != MovementUnit.Degree && measured.Aft is null && !move.Control.MovesIncidence())
                broken.Add(Rule("place-missing", $"Say how far behind the {PivotOf(move.Control)} it was measured, in {Words.Of(measured.Unit)}.", "aft"));
            else if (foreseen is { } wanted)
            {
                var within = GiveOrTake(move, measured, step, done, state, facts);
                var (differs, because) = (Math.Abs(measured.Amount - wanted) > within, !string.IsNullOrWhiteSpace(measured.OtherwiseBecause));
                if (differs && !because)
                    broken.Add(Rule("size-needs-reason", $"The {SeenAt(measured)} moved {Read(measured.Amount, measured.Unit)} {Words.Of(measured.Way)}; {Rounded(wanted, measured.Unit)} was to be expected, give or take {Rounded(within, measured.Unit)}. Measure it again. If it stays so, write why.", "otherwiseBecause"));
                if (!differs && because)
                    broken.Add(Rule("nothing-differs", $"The {SeenAt(measured)} moved as far as was to be expected, so there is nothing to give a reason for: leave the reason empty.", "otherwiseBecause"));
            }
        }
        return broken;
    }

    /// <summary>What the program knows better than the page.</summary>
    internal static MovementMeasured Stamped(MovementMeasured measured, WorkDone done, SquawkState state, Facts facts)
    {
        var tool = facts.Tools.GetValueOrDefault(measured.Tool);
        var step = tool is null ? null : StepOf(tool, measured.Unit);
        var move = ToProve(state).FirstOrDefault(move => move.Control == measured.Control);
        var expected = move is null ? null : ExpectedSize(move, measured, done, state, facts);
        return measured with
        {
            OtherwiseBecause = string.IsNullOrWhiteSpace(measured.OtherwiseBecause) ? null : measured.OtherwiseBecause,
            ToolCode = tool?.Code,
            CalibrationDue = tool?.CalibrationDue,
            ToolStep = step is { } shown ? Math.Round(shown, 6) : null,
            Expected = expected is { } size ? Round(size, measured.Unit) : null,
            GiveOrTake = expected is not null && step is { } smallest ? Round(GiveOrTake(move!, measured, smallest, done, state, facts), measured.Unit) : null,
        };
    }

    /// <summary>What the edge of a planned move is expected to do from where it was found; null when nothing on record or on file says.</summary>
    /// <param name="done">Where it was left; null for where the plan leaves it.</param>
    public static EdgeMove? Expected(PlannedMove move, WorkDone? done, SquawkState state, Facts facts)
    {
        ArgumentNullException.ThrowIfNull(move);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(facts);
        return To(move, done) is { } to ? Expected(move, to, state, facts) : null;
    }

    static EdgeMove? Expected(PlannedMove move, double to, SquawkState state, Facts facts) =>
        (Found(move.Control, state) ?? move.Numbers().From) is { } from && double.IsFinite(from) && double.IsFinite(to) && facts.Airframe is { } onFile ? EdgeMove.Of(move.Control.OnFile(), from, to, onFile.Read()) : null;

    static double? To(PlannedMove move, WorkDone? done) => (done is null ? null : Left(move.Control, done)) ?? move.Numbers().To;

    static double? Found(Control control, SquawkState state) => control.IsEccentric() ? state.AsFound?.Bushings.Of(control).Front : state.AsFound?.Adjusters.Of(control);

    static double? Left(Control control, WorkDone done) => control.IsEccentric() ? done.AsLeft.Of(control).Front : done.AdjustersAsLeft.Of(control);

    static bool LeftAsFound(Control control, WorkDone done, SquawkState state) =>
        (Found(control, state), Left(control, done)) is ({ } found, { } left) && AsLeft.Same(control, found, left);

    static double? ExpectedSize(PlannedMove move, MovementMeasured measured, WorkDone? done, SquawkState state, Facts facts) =>
        To(move, done) is { } to ? Size(Expected(move, to, state, facts), measured) : null;

    static double? Size(EdgeMove? edge, MovementMeasured measured) => edge is not { Turned: { } turned } ? null
        : measured.Unit == MovementUnit.Degree ? Math.Abs(turned.Degrees)
        : (measured.Aft is { } aft && double.IsFinite(aft) ? Length.FromMillimeters(aft * MmPer(measured.Unit)) : edge.RearSparAft) is { } place ? Math.Abs(edge.At(place)!.Value.Millimeters) / MmPer(measured.Unit)
        : null;

    static double GiveOrTake(PlannedMove move, MovementMeasured measured, double step, WorkDone? done, SquawkState state, Facts facts)
    {
        var to = To(move, done)!.Value;
        double At(double setting) => Size(Expected(move, setting, state, facts), measured) ?? 0;
        var (wanted, read) = (At(to), AsLeft.ReadTo(move.Control));
        var setting = Math.Max(Math.Abs(At(to + read) - wanted), Math.Abs(At(to - read) - wanted));
        return Math.Sqrt(2 * step * step + setting * setting + PlaceAndFile * PlaceAndFile * wanted * wanted);
    }

    static double? StepOf(Tool tool, MovementUnit unit) => tool.Scale is not { } scale || (scale.Unit == MovementUnit.Degree) != (unit == MovementUnit.Degree) ? null
        : scale.Step * MmPer(scale.Unit) / MmPer(unit);

    static double MmPer(MovementUnit unit) => unit == MovementUnit.Inch ? MmPerInch : 1;

    /// <summary>More than any edge is moved.</summary>
    static double Most(MovementUnit unit) => unit switch { MovementUnit.Millimetre => 200, MovementUnit.Inch => 8, _ => 45 };

    static int Sign(Seen way) => way is Seen.Down or Seen.Left ? 1 : -1;

    /// <summary>Closer nobody reads it.</summary>
    static double Round(double value, MovementUnit unit) => Math.Round(value, unit == MovementUnit.Inch ? 4 : 2);

    /// <summary>An amount as it was read.</summary>
    public static string Read(double amount, MovementUnit unit) => unit switch
    {
        MovementUnit.Degree => $"{Words.Number(amount, 4)}°",
        MovementUnit.Inch => $"{Words.Number(amount, 4)}{Directions.Space}in",
        _ => $"{Words.Number(amount, 4)}{Directions.Space}mm",
    };

    static string Rounded(double amount, MovementUnit unit) => Read(Round(amount, unit), unit);

    /// <summary>What is measured to move.</summary>
    public static string EdgeOf(Control control) => control switch
    {
        Control.LeftFlapRod or Control.RightFlapRod => "flap's trailing edge",
        Control.AileronTab or Control.RudderTab => "tab's trailing edge",
        _ => "wing's trailing edge",
    };

    /// <summary>What the tool stood at: a wing's rear spar itself, or the edge behind it.</summary>
    static string SeenAt(MovementMeasured measured) =>
        measured is { Aft: null, Unit: not MovementUnit.Degree } && measured.Control.MovesIncidence() ? "rear spar" : EdgeOf(measured.Control);

    /// <summary>The line about which it turns.</summary>
    public static string PivotOf(Control control) => control switch
    {
        Control.LeftFlapRod or Control.RightFlapRod => "flap's hinge",
        Control.AileronTab or Control.RudderTab => "tab's bend",
        Control.LeftStrutFork or Control.RightStrutFork => "front strut",
        _ => "front spar",
    };
}
