namespace Rigging.Squawks.People;

/// <summary>One squawk; a version-7 GUID, so that keys grow with time.</summary>
public readonly record struct SquawkId(Guid Value)
{
    public static SquawkId Next() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}

public readonly record struct AircraftId(Guid Value)
{
    public override string ToString() => Value.ToString();
}

/// <summary>A person as ledgers know them: a pseudonym. Name, certificate numbers and contacts live in a register, where they can be erased.</summary>
public readonly record struct PersonId(Guid Value)
{
    public override string ToString() => Value.ToString();
}

public readonly record struct CertificateId(Guid Value)
{
    public override string ToString() => Value.ToString();
}

public readonly record struct ToolId(Guid Value)
{
    public override string ToString() => Value.ToString();
}
