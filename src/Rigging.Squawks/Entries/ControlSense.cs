namespace Rigging.Squawks.Entries;

/// <summary>What each surface must do for an input called from the cockpit: the truth that the inspection compares with.</summary>
/// <remarks>Wheel or stick left raises the left aileron and lowers the right; left pedal moves the rudder's trailing edge left; wheel back raises the elevator.</remarks>
public static class ControlSense
{
    static readonly ControlSurface[] All = Enum.GetValues<ControlSurface>();

    // Beside any work on a wing stand the runs of both.
    static readonly ControlSurface[] Always = [ControlSurface.Ailerons, ControlSurface.Flaps];

    /// <summary>The same as sentences for a pilot at the wheel: "Wheel left: left aileron up, right aileron down."</summary>
    public static IReadOnlyList<string> Sentences(WorkDone? work, CorrectionAgreed? plan) =>
    [
        .. AskFor(work, plan).GroupBy(asked => asked.Input).Select(input =>
            $"{char.ToUpperInvariant(input.Key[0])}{input.Key[1..]}: {string.Join(", ", input.Select(asked => $"{asked.Surface} {asked.Expected.ToString().ToLowerInvariant()}"))}."),
    ];

    /// <summary>
    /// The observations asked for after work: ailerons and flaps always, and whatever else was disturbed or planned to be.
    /// Where the work says in words alone what it disturbed, every surface: words prove nothing left alone.
    /// </summary>
    public static IReadOnlyList<Observation> AskFor(WorkDone? work, CorrectionAgreed? plan)
    {
        ControlSurface[] disturbed = [.. Always, .. work is null ? [] : work.Surfaces ?? All, .. plan?.Moves.Select(move => MovedBy(move.Control)).OfType<ControlSurface>() ?? []];
        return [.. disturbed.Distinct().Order().SelectMany(ObservationsOf)];
    }

    /// <summary>The surface that a control is part of; null where the control moves none by itself, or may move any.</summary>
    public static ControlSurface? MovedBy(Control control) => control switch
    {
        Control.AileronNeutral or Control.AileronTab => ControlSurface.Ailerons,
        Control.LeftFlapRod or Control.RightFlapRod => ControlSurface.Flaps,
        Control.RudderTab => ControlSurface.Rudder,
        _ => null,
    };

    static Observation[] ObservationsOf(ControlSurface surface) => surface switch
    {
        ControlSurface.Ailerons =>
        [
            new("left aileron", "wheel left", Seen.Up, Seen.NotRecorded),
            new("right aileron", "wheel left", Seen.Down, Seen.NotRecorded),
            new("left aileron", "wheel right", Seen.Down, Seen.NotRecorded),
            new("right aileron", "wheel right", Seen.Up, Seen.NotRecorded),
        ],
        ControlSurface.Flaps => [new("left flap", "flaps down", Seen.Down, Seen.NotRecorded), new("right flap", "flaps down", Seen.Down, Seen.NotRecorded)],
        ControlSurface.Rudder => [new("rudder", "left pedal", Seen.Left, Seen.NotRecorded), new("rudder", "right pedal", Seen.Right, Seen.NotRecorded)],
        ControlSurface.Elevator => [new("elevator", "wheel back", Seen.Up, Seen.NotRecorded), new("elevator", "wheel forward", Seen.Down, Seen.NotRecorded)],
        _ => throw new ArgumentOutOfRangeException(nameof(surface)),
    };
}
