using Rigging.Squawks.Ledgers;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>What an aircraft may do, as the shape and the words that every page shows for it.</summary>
public sealed record Standing(Status Shape, string Word)
{
    public static Standing Of(FlightStatus may) => may switch
    {
        FlightStatus.MayFly => new(Status.MayFly, "May fly"),
        FlightStatus.Limits => new(Status.Limits, "May fly with limits"),
        FlightStatus.CrewOnly => new(Status.CrewOnly, "Crew only"),
        FlightStatus.Held => new(Status.Waiting, "Held, not to be flown"),
        FlightStatus.Grounded => new(Status.Grounded, "Grounded"),
        _ => throw new ArgumentOutOfRangeException(nameof(may)),
    };
}
