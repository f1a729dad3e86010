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
            .. ways.Select(way => new Choice(way.ToString(), asked.Surface == "rudder" ? Gaps.Fill(Say.TrailingEdge, Words.Of(way)) : Gaps.Fill(Say.ItWent, Words.Of(way)))),
            new(nameof(Seen.Still), Say.ItDidNotMove),
            new(nameof(Seen.NotRecorded), Say.NotLookedAt),
        ];
    }

    public static Inspected Read(TypedFields fields, Typed typed, SquawkFile file)
    {
        var differs = file.State.WorkDone?.Fact.DiffersBecause is not null;
        return new(
            typed.YesNo(fields["passed"], "passed", Say.Result),
            [.. file.State.ControlsToSee.Select(asked => asked with { Expected = Seen.NotRecorded, Seen = typed.Choice<Seen>(fields[FieldOf(asked)], FieldOf(asked), $"{Words.Capital(asked.Input)}, {asked.Surface}") })],
            typed.YesNo(fields["fullTravelAtEveryFlapSetting"], "fullTravelAtEveryFlapSetting", Say.FullTravel),
            typed.YesNo(fields["securedAndLocked"], "securedAndLocked", Say.AssemblyAndLocking),
            typed.YesNo(fields["nothingLeftBehind"], "nothingLeftBehind", Say.NothingLeftBehind),
            differs ? typed.YesNo(fields["acceptsDifference"], "acceptsDifference", Say.AsLeftDiffersFromPlan) : null,
            fields["findings"] ?? "");
    }

    /// <summary>This person's last look in the round, where it failed: the next one starts from it. Null where there was none, or where it passed.</summary>
    public static Entry? LastLook(SquawkFile file) =>
        file.Ledger.Entries.LastOrDefault(entry => entry.Sequence >= file.Ledger.FirstOfRound && entry.Fact is Inspected && entry.By == file.Facts.Who.Id) is { Fact: Inspected { Passed: false } } look ? look : null;

    /// <summary>The form as its inspector left it at a look that failed: what was seen and found. The result is open again.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Typed(Inspected look) =>
    [
        .. look.Observations.Select(o => KeyValuePair.Create(FieldOf(o), o.Seen.ToString())),
        new("fullTravelAtEveryFlapSetting", YesNo(look.FullTravelAtEveryFlapSetting)),
        new("securedAndLocked", YesNo(look.SecuredAndLocked)),
        new("nothingLeftBehind", YesNo(look.NothingLeftBehind)),
        .. look.AcceptsDifference is { } accepts ? [new("acceptsDifference", YesNo(accepts))] : Array.Empty<KeyValuePair<string, string>>(),
        new("findings", look.Findings),
    ];

    static string YesNo(bool yes) => yes ? "yes" : "no";

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
                ? asked.Where(o => fields[FieldOf(o)] == nameof(Seen.NotRecorded)).Select(o => new BrokenRule("seen-missing", Gaps.Fill(Say.WasNotLookedAtItMustBeSeen, Words.Capital(o.Input), o.Surface), FieldOf(o)))
                : [],
            .. broken.Any(rule => rule.Code == "mismatch-cannot-pass")
                ? asked.Where(o => Enum.TryParse<Seen>(fields[FieldOf(o)], out var seen) && seen != Seen.NotRecorded && seen != o.Expected).Select(o => new BrokenRule("mismatch-cannot-pass",
                    Gaps.Fill(Say.DidNotDoWhat, Words.Capital(o.Input), o.Surface), FieldOf(o)))
                : [],
        ];
    }
}
