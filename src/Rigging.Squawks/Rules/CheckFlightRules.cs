using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

static class CheckFlightRules
{
    public static IEnumerable<BrokenRule> Of(CheckFlown flown, SquawkState state, Facts facts)
    {
        if (flown.Passengers != 0) yield return new("passengers-carried", $"{flown.Passengers} passengers: on the check flight there are none.", "passengers");
        if (flown.Students != 0) yield return new("students-carried", $"{flown.Students} students: on the check flight there are none.", "students");
        if (flown.SecondCrewDuty is { } duty && string.IsNullOrWhiteSpace(duty))
            yield return new("second-crew-without-duty", "A second crew member needs a named duty; else fly alone.", "secondCrewDuty");
        if (!flown.ReadWhatWasDisturbed) yield return new("briefing-not-read", "Read what was disturbed before you fly, and say so.", "readWhatWasDisturbed");
        if (!flown.ControlsCheckedBeforeFlight) yield return new("controls-not-checked", "Check the sense of the disturbed controls yourself before you fly, and say so.", "controlsCheckedBeforeFlight");
        if (!(flown.DurationH > 0 && flown.DurationH <= 12)) yield return new("value-out-of-range", $"A flight of {Words.Number(flown.DurationH)} h cannot be: wanted more than 0, at most 12.", "durationH");
        if (flown.FlownOn > facts.Today) yield return new("date-in-future", $"The flight is dated {flown.FlownOn:uuuu-MM-dd}, which has not come yet.", "flownOn");
        if (state.WorkDone is { } work && flown.FlownOn < work.Fact.CompletedOn)
            yield return new("flown-before-the-work", $"The flight is dated {flown.FlownOn:uuuu-MM-dd}, before the work was completed on {work.Fact.CompletedOn:uuuu-MM-dd}.", "flownOn");
        else if (state.Approval is { Fact.ApprovedOn: { } approvedOn } && flown.FlownOn < approvedOn)
            yield return new("flown-before-approval", $"The flight is dated {flown.FlownOn:uuuu-MM-dd}, before the work was approved on {approvedOn:uuuu-MM-dd}: nobody may have flown it then.", "flownOn");
        if (ChangesTheWing(state) && !flown.StallsFlown)
            foreach (var rule in Contents.Needed(flown.StallsNotFlownBecause, "stalls-missing", "stallsNotFlownBecause", "why the stall was not flown, or fly it")) yield return rule;
        if (ChangesTheWing(state) && !flown.EveryFlapSetting)
            foreach (var rule in Contents.Needed(flown.FlapsNotFlownBecause, "flaps-missing", "flapsNotFlownBecause", "why not every flap setting was flown, or fly them")) yield return rule;
        if (flown.StallsFlown && flown.StallsNotFlownBecause is not null)
            yield return new("flown-and-not-flown", "You say that the stall was flown, and why it was not: leave one of them out.", "stallsNotFlownBecause");
        if (flown.EveryFlapSetting && flown.FlapsNotFlownBecause is not null)
            yield return new("flown-and-not-flown", "You say that each flap setting was flown, and why not: leave one of them out.", "flapsNotFlownBecause");
        foreach (var rule in Contents.Needed(flown.Remarks, "text-missing", "remarks", "how it flew")) yield return rule;
        foreach (var rule in TestPoints.Of(flown.TestPoints, facts)) yield return rule;
        foreach (var rule in Aboard(flown)) yield return rule;
    }

    /// <summary>Who flew it and who sat in it are asked apart, and must agree.</summary>
    static IEnumerable<BrokenRule> Aboard(CheckFlown flown)
    {
        if (TestPoints.SeatsFilled(flown.TestPoints).OfType<IReadOnlyList<string>>().FirstOrDefault(seats => seats.Count != (flown.SecondCrewDuty is null ? 1 : 2)) is { } filled)
            yield return new("crew-and-seats-disagree",
                $"{(flown.SecondCrewDuty is null ? "Flown alone" : "Flown with a second crew member")}, and {(filled.Count == 1 ? "one seat is" : $"{filled.Count} seats are")} filled ({string.Join(", ", filled)}): wanted a weight for every person aboard, and nobody else in a seat.", "crew");
    }

    /// <summary>Incidence, strut, flap or aileron work. A repair or replacement may be any of these, so it counts.</summary>
    static bool ChangesTheWing(SquawkState state) =>
        state.Correction?.Moves.Any(move => move.Control is not (Control.RudderTab or Control.CableTension)) == true;
}
