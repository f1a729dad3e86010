using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Storage.Tools;

/// <summary>A wrench or measuring tool on the school's list.</summary>
public sealed class ToolRow
{
    public ToolId Id { get; init; } = new(Guid.CreateVersion7());

    /// <summary>The code painted on it, such as "TW-2".</summary>
    public required string Code { get; set; }

    /// <summary>torque-wrench, tensiometer, inclinometer, protractor, dial-indicator, …</summary>
    public required string Kind { get; set; }

    public required string Description { get; set; }
    public string? Serial { get; set; }

    /// <summary>Least and greatest reading it is trusted for, in <see cref="RangeUnit"/>; null when not stated.</summary>
    public double? RangeMin { get; set; }

    public double? FullScale { get; set; }

    /// <summary>Our own unit code, such as <c>lbf.in</c> or <c>N.m</c>.</summary>
    public string? RangeUnit { get; set; }

    /// <summary>Smallest step that it shows, in <see cref="RangeUnit"/>, of an angle in degrees; null when not stated.</summary>
    public double? Resolution { get; set; }

    /// <summary>Drive to middle of the grip, inches; torque wrenches only.</summary>
    public double? LeverLengthIn { get; set; }

    public LocalDate? CalibratedOn { get; set; }

    /// <summary>Last day on which a reading counts; null when never calibrated.</summary>
    public LocalDate? CalibrationDue { get; set; }
}

sealed class ToolTable : IEntityTypeConfiguration<ToolRow>
{
    public void Configure(EntityTypeBuilder<ToolRow> table)
    {
        table.ToTable("tool");
        table.HasIndex(tool => tool.Code).IsUnique();
    }
}
