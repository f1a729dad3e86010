using Rigging.Squawks.Ledgers;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>What an aircraft may do, as the shape and the words that every page shows for it.</summary>
public sealed record Standing(Status Shape, string Word)
{
    public static Standing Of(FlightStatus may) => may switch
    {
        FlightStatus.MayFly => new(Status.MayFly, Texts.NoRiggingHold),
        FlightStatus.Limits => new(Status.Limits, Texts.MayFlyWithLimits),
        FlightStatus.CrewOnly => new(Status.CrewOnly, Texts.CrewOnly),
        FlightStatus.Held => new(Status.Waiting, Texts.Held),
        FlightStatus.Grounded => new(Status.Grounded, Texts.Grounded),
        _ => throw new ArgumentOutOfRangeException(nameof(may)),
    };
}
