using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Storage.Fleet;

public sealed class AircraftRow
{
    public AircraftId Id { get; init; } = new(Guid.CreateVersion7());
    public required string Registration { get; set; }
    public required string Serial { get; set; }
    public required string AirframeId { get; set; }
    public required int AirframeVersion { get; set; }

    /// <summary>Total time in service, tenths of an hour.</summary>
    public required int TotalTimeTenths { get; set; }

    /// <summary>The day it is of; null where nobody knows any more.</summary>
    public LocalDate? TotalTimeOn { get; set; }

    /// <summary>The load at which this aircraft is meant to fly straight, in the form the assessment takes; null until chosen.</summary>
    public string? RiggedForLoad { get; set; }

    public PersonId? RiggedForChosenBy { get; set; }
    public string? RiggedForReason { get; set; }
}

/// <summary>One version of an airframe's data, kept exactly as entered: an assessment can be recomputed from it years later.</summary>
public sealed class AirframeRow
{
    public required string Id { get; init; }

    /// <summary>Counts from 1. A change is a new version; a version never changes.</summary>
    public required int Version { get; init; }

    public required string Name { get; init; }
    public required string Json { get; init; }
    public PersonId? EnteredBy { get; init; }
    public required Instant EnteredAt { get; init; }
}

sealed class AircraftTable : IEntityTypeConfiguration<AircraftRow>
{
    public void Configure(EntityTypeBuilder<AircraftRow> table)
    {
        table.ToTable("aircraft");
        table.HasIndex(aircraft => aircraft.Registration).IsUnique();
        table.HasOne<AirframeRow>().WithMany()
            .HasForeignKey(aircraft => new { aircraft.AirframeId, aircraft.AirframeVersion })
            .OnDelete(DeleteBehavior.Restrict);
    }
}

sealed class AirframeTable : IEntityTypeConfiguration<AirframeRow>
{
    public void Configure(EntityTypeBuilder<AirframeRow> table)
    {
        table.ToTable("airframe");
        table.HasKey(airframe => new { airframe.Id, airframe.Version });
    }
}
