using System.Text.Json.Serialization;
using NodaTime;

namespace Rigging.Squawks.Entries;

/// <summary>Still: the surface did not move at all.</summary>
public enum Seen { NotRecorded, Up, Down, Left, Right, Still }

/// <summary>A control input called from the cockpit and what the person at the surface saw. There is no default.</summary>
/// <param name="Expected">What the surface must do for that input, from <see cref="ControlSense"/>.</param>
public sealed record Observation(string Surface, string Input, Seen Expected, Seen Seen)
{
    /// <summary>Seen, and seen to move some other way than it must.</summary>
    [JsonIgnore]
    public bool WrongWay => Seen != Seen.NotRecorded && Seen != Expected;
}

/// <summary>The second act: the second look at a disturbed flight control, by someone who did not do the work.</summary>
/// <param name="AcceptsDifference">The inspector accepts that as left differs from the plan; null when it does not.</param>
public sealed record Inspected(
    bool Passed,
    IReadOnlyList<Observation> Observations,
    bool FullTravelAtEveryFlapSetting,
    bool SecuredAndLocked,
    bool NothingLeftBehind,
    bool? AcceptsDifference,
    string Findings) : Fact;

/// <summary>The third act: approval for return to service of the work described, passengers barred.</summary>
/// <param name="RecordEntry">The maintenance record entry, people and certificates as tokens.</param>
/// <param name="ApprovedOn">The school's day of the signature, filled in by the program: no check flight is dated before it.</param>
public sealed record Approved(
    string RecordEntry,
    LocalDate CompletedOn,
    double TotalTimeH,
    bool MayHaveChangedHandling,
    string? ConclusiveBecause,
    LocalDate? ApprovedOn = null) : Fact;

/// <summary>The fourth act: the rated pilot's log of the check flight.</summary>
/// <param name="FuelMeasured">Fuel per side was dipped or metered, not read off a gauge.</param>
/// <param name="TestPoints">JSON array of test points in the form of the assessment endpoint; carries the day's fuel and seats.</param>
/// <param name="StallsFlown">Compared with the baseline; else <paramref name="StallsNotFlownBecause"/>.</param>
/// <param name="Satisfactory">The operational check found the aircraft safe to carry passengers.</param>
/// <param name="Trims">Null when not recorded.</param>
public sealed record CheckFlown(
    LocalDate FlownOn,
    double DurationH,
    int Passengers,
    int Students,
    string? SecondCrewDuty,
    bool ReadWhatWasDisturbed,
    bool ControlsCheckedBeforeFlight,
    bool FuelMeasured,
    string TestPoints,
    bool StallsFlown,
    string? StallsNotFlownBecause,
    bool EveryFlapSetting,
    string? FlapsNotFlownBecause,
    bool Satisfactory,
    string Remarks,
    TrimsFlown? Trims = null) : Fact, IFlown;

public enum VerdictWord { Accepted, AdjustAgain, NotEnoughEvidence }

/// <summary>What the check flight says about the complaint once the day's fuel and loading are taken out.</summary>
/// <param name="TendencyDegPerS">With the load it is rigged for, right wing down positive: the day's load is not in it.</param>
/// <param name="LoadShareDegPerS">What the day's load added to that.</param>
/// <param name="WorseThanBefore">To be adjusted again, and further out than before the work. Filled in by the program; null when that is not known.</param>
public sealed record VerdictGiven(
    VerdictWord Verdict,
    double? TendencyDegPerS,
    double? LoadShareDegPerS,
    string Explanation,
    string Request,
    string Response,
    string LibraryVersion,
    bool? WorseThanBefore = null) : Fact;

/// <summary>The fifth act: the school's inspector closes the complaint.</summary>
public sealed record Closed(string Statement) : Fact;

/// <summary>Not cured: back to the checks. History stays.</summary>
public sealed record RoundOpened(string Reason) : Fact;
