using NodaTime;

namespace Rigging.Squawks.Entries;

/// <summary>A flight whose readings are evidence.</summary>
public interface IFlown
{
    LocalDate FlownOn { get; }

    /// <summary>JSON array of test points in the form of the assessment endpoint.</summary>
    string TestPoints { get; }

    /// <summary>Null when not recorded.</summary>
    TrimsFlown? Trims { get; }
}

/// <summary>Off neutral it is set to put that wing down.</summary>
public enum RollTrim { Neutral, LeftWingDown, RightWingDown, NotFitted }

/// <summary>Off neutral it is set to put the nose to that side.</summary>
public enum YawTrim { Neutral, NoseLeft, NoseRight, NotFitted }

/// <summary>Disconnected: its breaker pulled, or its clutch proved free. Engaged: it flew the aircraft.</summary>
public enum FlownAutopilot { Off, Disconnected, Engaged, NotFitted }

/// <summary>How the trims stood and what the autopilot did while the readings were taken. Null is "not recorded".</summary>
public sealed record TrimsFlown(RollTrim? Roll, YawTrim? Yaw, FlownAutopilot? Autopilot)
{
    /// <summary>What on record held the aircraft, or rolled it, as a hand would, and nothing else; null when nothing did.</summary>
    public TrimsFlown? WhatHeld()
    {
        var held = new TrimsFlown(
            Roll is RollTrim.LeftWingDown or RollTrim.RightWingDown ? Roll : null,
            Yaw is YawTrim.NoseLeft or YawTrim.NoseRight ? Yaw : null,
            Autopilot is FlownAutopilot.Engaged ? Autopilot : null);
        return held == new TrimsFlown(null, null, null) ? null : held;
    }

    /// <summary>Whether nothing here held it, and all that held it on another flight is on record here.</summary>
    public bool PutsRight(TrimsFlown held) => WhatHeld() is null
        && (held.Roll is null || Roll is not null) && (held.Yaw is null || Yaw is not null) && (held.Autopilot is null || Autopilot is not null);
}
