using NodaTime;

namespace Rigging.Squawks.People;

/// <summary>Who acts, as the rules need to know them at that moment.</summary>
public sealed record Person(PersonId Id, IReadOnlyList<Authority> Authorities, IReadOnlyList<Certificate> Certificates)
{
    public bool May(Authority authority) => Authorities.Contains(authority);
}

/// <summary>A certificate on file. <paramref name="Kind"/> is a rule set's word for it; the number stays in the register.</summary>
/// <param name="ValidUntil">Last day on which it is valid; null when it does not expire.</param>
public sealed record Certificate(CertificateId Id, string Kind, LocalDate? ValidUntil)
{
    public bool ValidOn(LocalDate day) => ValidUntil is not { } last || day <= last;
}

/// <summary>A measuring tool or wrench as it stood when it was used.</summary>
/// <param name="CalibrationDue">Last day on which a reading counts; null when never calibrated.</param>
/// <param name="LowInLb">Least torque the wrench is trusted for, inch-pounds; null for other tools.</param>
/// <param name="HighInLb">Greatest torque the wrench is trusted for, inch-pounds; null for other tools.</param>
public sealed record Tool(ToolId Id, string Code, string Description, LocalDate? CalibrationDue, double? LowInLb, double? HighInLb, double? LeverIn)
{
    public bool InCalibrationOn(LocalDate day) => CalibrationDue is { } due && day <= due;
}
