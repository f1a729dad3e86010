using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

/// <summary>What somebody in the cockpit should know of the aircraft before flying it, or before reporting the same thing twice.</summary>
/// <param name="Disturbed">Newest first.</param>
/// <param name="Known">Complaints that are open already.</param>
public sealed record Lately(AircraftId Id, string Registration, string AirframeName, FlightStatus May, SchoolOnFile School, IReadOnlyList<Disturbance> Disturbed, IReadOnlyList<KnownComplaint> Known)
{
    public const int Days = 60;
}

/// <summary>Rigging work that was signed.</summary>
/// <param name="Items">As the mechanic listed them.</param>
/// <param name="Look">What each control must do when the pilot looks: the inspection's own table, in words.</param>
/// <param name="Flown">A check flight since then was satisfactory.</param>
public sealed record Disturbance(int Squawk, LocalDate On, string Day, IReadOnlyList<string> Items, IReadOnlyList<string> Look, bool Flown);

/// <param name="Sentence">What it does, from the answers of the report: the reporter's own words are the school's to read.</param>
public sealed record KnownComplaint(int Squawk, string Day, string Sentence);
