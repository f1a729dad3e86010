using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

/// <summary>What somebody in the cockpit should know of the aircraft before flying it, or before reporting the same thing twice.</summary>
/// <param name="Disturbed">Newest first.</param>
/// <param name="Open">Open complaints, the most pressing first.</param>
public sealed record Lately(AircraftId Id, string Registration, string AirframeName, FlightStatus May, SchoolOnFile School, IReadOnlyList<Disturbance> Disturbed, IReadOnlyList<OpenComplaint> Open)
{
    public const int Days = 60;
}

/// <summary>Rigging work that was signed.</summary>
/// <param name="Items">As the mechanic listed them.</param>
/// <param name="Look">What each control must do when the pilot looks: the inspection's own table, in words.</param>
/// <param name="Flown">A check flight since then was satisfactory.</param>
public sealed record Disturbance(int Squawk, LocalDate On, string Day, IReadOnlyList<string> Items, IReadOnlyList<string> Look, bool Flown);

/// <summary>A complaint that is open: whoever sits in the aircraft reads it as the pilot put it.</summary>
/// <param name="Words">The pilot's own; where there are none, what was ticked.</param>
/// <param name="May">What it lets the aircraft do, <paramref name="Reason"/> why, and within which <paramref name="Limits"/>.</param>
public sealed record OpenComplaint(int Squawk, string Day, string Words, FlightStatus May, string Reason, string? Limits);
