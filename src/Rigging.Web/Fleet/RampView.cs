using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Web.Desk;

namespace Rigging.Web.Fleet;

/// <summary>The ramp as one person sees it.</summary>
/// <param name="Notices">What this person has not read yet, newest first.</param>
public sealed record RampView(SchoolOnFile School, IReadOnlyList<Strip> Strips, IReadOnlyList<NoticeOnRamp> Notices);

/// <summary>One aircraft.</summary>
/// <param name="Open">Its open squawks, the most pressing first.</param>
public sealed record Strip(string Registration, string AirframeName, double TotalTimeH, IReadOnlyList<OpenSquawk> Open)
{
    /// <summary>The worst of all its squawks.</summary>
    public FlightStatus May => Open.Count == 0 ? FlightStatus.MayFly : Open[0].Allows;

    public OpenSquawk? Pressing => Open.Count == 0 ? null : Open[0];
}

/// <param name="Summary">The beginning of the pilot's words.</param>
/// <param name="Limits">Of the call, when it may fly with limits; null otherwise.</param>
/// <param name="Next">The next act, and who may do it.</param>
/// <param name="Mine">The next act is open to the person who looks.</param>
public sealed record OpenSquawk(
    int Number, AircraftId Aircraft, Stage Stage, FlightStatus Allows, string Summary, string? Limits, string? Next, IReadOnlyList<Authority> By, bool Mine);

/// <summary>The latest unread notice about one squawk; what came before it is answered by it.</summary>
public sealed record NoticeOnRamp(int Squawk, string Subject, string Body, Instant At);

/// <summary>Everything that was ever squawked about one aircraft, newest first.</summary>
/// <param name="Flew">How it flew hands off over the months; null when nothing on record says.</param>
/// <param name="Feel">The latest of that in the pilot's currency; empty when nothing on record says.</param>
public sealed record AircraftHistory(
    string Registration, string Serial, string AirframeId, int AirframeVersion, string AirframeName, double TotalTimeH, FlightStatus May, SchoolOnFile School, RiggedFor? RiggedFor,
    IReadOnlyList<PastSquawk> Squawks, IReadOnlyList<StripeToSee> Stripes, Plots.Chart? Flew, IReadOnlyList<string> Feel);

/// <summary>The load at which an aircraft is meant to fly straight: there it is judged.</summary>
/// <param name="ChosenBy">Null where it is the airframe file's own.</param>
/// <param name="Others">What is felt at other loads when it flies straight at that one.</param>
public sealed record RiggedFor(string Load, string? ChosenBy, string? Reason, IReadOnlyList<LoadLine> Others);

/// <summary>A torque of a squawk that is over, not looked at again yet.</summary>
public sealed record StripeToSee(int Squawk, string Fastener, Instant TorquedAt);

public sealed record PastSquawk(int Number, Stage Stage, int Round, string Summary, Instant OpenedAt, Instant UpdatedAt);
