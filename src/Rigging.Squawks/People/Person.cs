using NodaTime;

namespace Rigging.Squawks.People;

/// <summary>Who acts, as the rules need to know them at that moment.</summary>
/// <param name="Visit">Set for a guest: an outside inspector, mechanic or pilot asked in for one squawk.</param>
/// <param name="Left">The person left the school: nothing more can be done in their name.</param>
public sealed record Person(PersonId Id, IReadOnlyList<Authority> Authorities, IReadOnlyList<Certificate> Certificates, Visit? Visit = null, bool Left = false)
{
    public bool May(Authority authority) => Authorities.Contains(authority);
}

/// <summary>A guest's one squawk, and when the visit ends by itself.</summary>
public sealed record Visit(SquawkId Squawk, Instant Until);

/// <summary>A certificate on file. <paramref name="Kind"/> is a rule set's word for it; the number stays in the register.</summary>
/// <param name="ValidUntil">Last day on which it is valid; null when it does not expire.</param>
/// <param name="RecentUntil">Last day up to which recent experience is stated; null when nobody stated any.</param>
public sealed record Certificate(CertificateId Id, string Kind, LocalDate? ValidUntil, LocalDate? RecentUntil = null)
{
    public bool ValidOn(LocalDate day) => ValidUntil is not { } last || day <= last;

    public bool RecentOn(LocalDate day) => RecentUntil is { } last && day <= last;
}

/// <summary>What a tool of the school's list is.</summary>
public enum ToolKind { TorqueWrench, Tensiometer, Inclinometer, Protractor, DialIndicator, SpringScale, Other }

/// <summary>A measuring tool or wrench as it stood when it was used.</summary>
/// <param name="CalibrationDue">Last day on which a reading counts; null when never calibrated.</param>
/// <param name="Low">Least reading it is trusted for, in the unit of its kind; null when none is on file in such a unit.</param>
/// <param name="High">Greatest reading it is trusted for.</param>
/// <param name="LeverIn">Of a torque wrench.</param>
public sealed record Tool(ToolId Id, string Code, string Description, LocalDate? CalibrationDue, double? Low, double? High, double? LeverIn, ToolKind Kind)
{
    /// <summary>In which tools of a kind are read; null for what has no scale that is known here.</summary>
    public static string? UnitOf(ToolKind kind) => kind switch
    {
        ToolKind.TorqueWrench => "in·lb",
        ToolKind.Tensiometer or ToolKind.SpringScale => "N",
        ToolKind.Inclinometer or ToolKind.Protractor => "°",
        ToolKind.DialIndicator => "mm",
        _ => null,
    };

    /// <summary>How fine it shows a movement; null for what shows none, and where nobody entered it.</summary>
    public ToolScale? Scale { get; init; }

    public bool InCalibrationOn(LocalDate day) => CalibrationDue is { } due && day <= due;
}

/// <summary>What a tool's scale shows.</summary>
/// <param name="Step">Smallest step, more than 0.</param>
public sealed record ToolScale(Entries.MovementUnit Unit, double Step);
