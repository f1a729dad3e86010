namespace Rigging.Squawks.Ledgers;

/// <summary>What a squawk lets the aircraft do, from least to most barred: an aircraft has the worst of all its squawks.</summary>
public enum FlightStatus
{
    /// <summary>No rigging hold.</summary>
    MayFly,

    /// <summary>May fly with the limits of the call.</summary>
    Limits,

    /// <summary>Approved after work: crew only, no passengers, until the check flight is logged.</summary>
    CrewOnly,

    /// <summary>Held for a call, or in work and not yet approved.</summary>
    Held,

    Grounded,
}
