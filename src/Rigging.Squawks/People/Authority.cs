namespace Rigging.Squawks.People;

/// <summary>What the school lets a person do. A person may hold several; an entry says under which one they acted.</summary>
public enum Authority
{
    Pilot,
    Office,
    Mechanic,
    Inspector,

    /// <summary>May approve for return to service, with the certificate that the rule set asks for.</summary>
    Certifier,

    /// <summary>Reported from the cockpit with a name and the school's PIN: nobody has confirmed who it was. May report and nothing else; the office gives it to nobody.</summary>
    Reporter,
}
