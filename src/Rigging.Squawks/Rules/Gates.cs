using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

/// <summary>Rules about whether such an entry has a place now and whether this person may make it: the ones a page can ask before anything is typed.</summary>
static class Gates
{
    static readonly Type[] LeavesTheAircraftToOthers = [typeof(NoFaultFound), typeof(WithinLimits), typeof(JoinedTo), typeof(HandedOver)];
    static readonly Type[] GoesOnWhileWaiting = [typeof(Resumed), typeof(Noted), typeof(Called), typeof(GroundChecked), typeof(Waiting), typeof(TotalTimeCorrected)];

    public static BrokenRule NewerEntries => new("newer-entries", "This squawk holds entries written by a newer version of the program. Nothing can be signed until this one is updated.");

    public static IEnumerable<BrokenRule> Of(Type kind, SquawkState state, Facts facts)
    {
        if (MoveTable.Find(kind, state.Stage) is not { } row)
        {
            yield return new("wrong-stage", state.Stage is { } stage
                ? $"This cannot be done while the squawk is {Words.Of(stage)}."
                : "There is no such squawk yet.");
            yield break;
        }
        if (!row.By.Any(facts.Who.May))
            yield return new("no-authority", $"This is for {Words.Any(row.By)}. You act here as {Words.List(facts.Who.Authorities)}.");
        if (row.Signed && state.HasNewerEntries)
            yield return NewerEntries;
        if (state.Waiting is { } waiting && !GoesOnWhileWaiting.Contains(kind))
            yield return new("waiting", $"The squawk waits for {Words.Of(waiting.For)}: {waiting.Reason} Say that it resumes first.");
        if (kind == typeof(Resumed) && state.Waiting is null)
            yield return new("not-waiting", "The squawk is not waiting for anything.");
        foreach (var rule in Special(kind, state, facts)) yield return rule;
        foreach (var rule in OfPerson(kind, state, facts)) yield return rule;
    }

    /// <summary>What an act asks of its person beyond a part in the school: a certificate, and no hand in what is judged.</summary>
    public static IEnumerable<BrokenRule> OfPerson(Type kind, SquawkState state, Facts facts)
    {
        if (kind == typeof(CheckFlown) && Certificates.Missing(facts.RuleSet.MayFlyCheck, "The check flight", "pilot-not-rated", facts) is { } notRated) yield return notRated;
        if (kind == typeof(Inspected) && state.Workers.Contains(facts.Who.Id))
            yield return new("inspector-did-the-work", "You took part in this work, so you cannot be its independent inspector. Another inspector must look.");
        if (kind != typeof(Approved)) yield break;
        if (!facts.RuleSet.WorkerMayCertify && state.Workers.Contains(facts.Who.Id))
            yield return new("certifier-did-the-work", "Under this rule set whoever did the work may not approve it.");
        if (Certificates.Missing(facts.RuleSet.MayCertify, "Approval for return to service", "certificate-does-not-cover-the-work", facts) is { } rule) yield return rule;
    }

    static IEnumerable<BrokenRule> Special(Type kind, SquawkState state, Facts facts)
    {
        if (kind == typeof(EvaluationFlown))
        {
            var allows = (FlightStatus)Math.Max((int)state.FlightStatus, (int)facts.OthersAllow);
            if (allows > FlightStatus.Limits)
                yield return new("aircraft-may-not-fly", state.DamageSuspected ? DamageQuestion
                    : allows == state.FlightStatus ? $"By this squawk the aircraft is “{Words.Of(allows)}”; an evaluation flight needs a call that permits it."
                    : OthersKeepIt(facts));
        }
        if (kind == typeof(CheckFlown))
        {
            if (facts.OthersAllow > FlightStatus.CrewOnly)
                yield return new("aircraft-may-not-fly", OthersKeepIt(facts));
            if (Grounded(state) is { } grounded) yield return grounded;
        }
        if (kind == typeof(Approved))
        {
            if (state.Inspection is not { Fact.Passed: true })
                yield return new("inspection-not-passed", "No independent inspection of this work has passed.");
            if (Grounded(state) is { } grounded) yield return grounded;
        }
        if (kind == typeof(WorkStarted) && (facts.DamageInDoubt(state) || state.DamageClear != true) && state.Correction is { } agreed && agreed.Moves.Any(m => m.Control.MovesIncidence()))
            yield return new("damage-not-ruled-out", "A damage inspection must clear the aircraft before incidence is moved.");
        if (kind == typeof(WorkDone) && state.Loose is { } loose)
            yield return new("left-loose", $"The last handover says: {loose} Record that it is tight again before you sign the work.");
        if (kind == typeof(Closed))
        {
            if (state.Verdict is null)
                yield return new("verdict-missing", "There is no verdict on the check flight yet.");
            else if (state.Verdict.Verdict != VerdictWord.Accepted)
                yield return new("verdict-not-accepted", $"The verdict is “{Words.Of(state.Verdict.Verdict)}”. Open another round, or record it as within limits.");
            if (state.FlightStatus > FlightStatus.Limits)
                yield return new("aircraft-grounded", $"By this squawk the aircraft is “{Words.Of(state.FlightStatus)}”; closing would lift that.");
        }
        if (LeavesTheAircraftToOthers.Contains(kind) && state.FlightStatus == FlightStatus.Grounded)
            yield return new("aircraft-grounded", "The aircraft is grounded by this squawk; this would lift that. A call or a damage inspection must do so first.");
    }

    static BrokenRule? Grounded(SquawkState state) =>
        state.DamageSuspected ? new("aircraft-grounded", DamageQuestion)
        : state.CheckFlight is { Fact.Satisfactory: false } ? new("aircraft-grounded", "The last check flight was not satisfactory. A mechanic or inspector must open another round.")
        : state.FlightStatus == FlightStatus.Grounded ? new("aircraft-grounded", "The aircraft was grounded by a call since the work began. A mechanic or inspector must make another call first.")
        : null;

    const string DamageQuestion = "The aircraft is grounded until a damage inspection is recorded clear. An inspector signs that.";

    static string OthersKeepIt(Facts facts) => $"By another squawk of this aircraft ({OtherNumbers(facts)}) it is “{Words.Of(facts.OthersAllow)}”.";

    static string OtherNumbers(Facts facts) =>
        string.Join(", ", facts.OtherSquawks.Where(o => o.Allows == facts.OthersAllow).Select(o => $"S-{o.Number}"));
}
