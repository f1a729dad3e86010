using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Inspection;

/// <summary>The inspection as typed: every question unanswered until somebody answers it.</summary>
static class InspectionForm
{
    /// <summary>Which field an observation is answered in.</summary>
    public static string FieldOf(Observation asked) => $"seen-{asked.Surface}-{asked.Input}".Replace(' ', '-');

    /// <summary>What a surface can be seen to do. The list never depends on what is right.</summary>
    public static IReadOnlyList<Choice> WaysOf(Observation asked)
    {
        Seen[] ways = asked.Surface == "rudder" ? [Seen.Left, Seen.Right] : [Seen.Up, Seen.Down];
        return
        [
            .. ways.Select(way => new Choice(way.ToString(), asked.Surface == "rudder" ? $"Trailing edge {Words.Of(way)}" : $"It went {Words.Of(way)}")),
            new(nameof(Seen.Still), "It did not move"),
            new(nameof(Seen.NotRecorded), "Not looked at"),
        ];
    }

    public static Inspected Read(TypedFields fields, Typed typed, SquawkFile file)
    {
        var differs = file.State.WorkDone?.Fact.DiffersBecause is not null;
        return new(
            typed.YesNo(fields["passed"], "passed", "Result"),
            [.. file.State.ControlsToSee.Select(asked => asked with { Expected = Seen.NotRecorded, Seen = typed.Choice<Seen>(fields[FieldOf(asked)], FieldOf(asked), $"{Words.Capital(asked.Input)}, {asked.Surface}") })],
            typed.YesNo(fields["fullTravelAtEveryFlapSetting"], "fullTravelAtEveryFlapSetting", "Full travel"),
            typed.YesNo(fields["securedAndLocked"], "securedAndLocked", "Assembly and locking"),
            typed.YesNo(fields["nothingLeftBehind"], "nothingLeftBehind", "Nothing left behind"),
            differs ? typed.YesNo(fields["acceptsDifference"], "acceptsDifference", "As left differs from the plan") : null,
            fields["findings"] ?? "");
    }

    /// <summary>
    /// The refusals at their fields. A control seen to move the wrong way is said without naming the right way: an answer is changed by looking again, not by reading.
    /// </summary>
    public static IReadOnlyList<BrokenRule> Uncoached(IReadOnlyList<BrokenRule> broken, TypedFields fields, SquawkFile file)
    {
        var asked = file.State.ControlsToSee;
        return
        [
            .. broken.Where(rule => rule.Field != "observations"),
            .. broken.Any(rule => rule.Code == "seen-missing")
                ? asked.Where(o => fields[FieldOf(o)] == nameof(Seen.NotRecorded)).Select(o => new BrokenRule("seen-missing", $"{Words.Capital(o.Input)}: the {o.Surface} was not looked at. It must be seen before the inspection passes.", FieldOf(o)))
                : [],
            .. broken.Any(rule => rule.Code == "mismatch-cannot-pass")
                ? asked.Where(o => Enum.TryParse<Seen>(fields[FieldOf(o)], out var seen) && seen != Seen.NotRecorded && seen != o.Expected).Select(o => new BrokenRule("mismatch-cannot-pass",
                    $"{Words.Capital(o.Input)}: the {o.Surface} did not do what it must. Have it called again and look. If you see the same, record the inspection as failed: that grounds the aircraft.", FieldOf(o)))
                : [],
        ];
    }
}
