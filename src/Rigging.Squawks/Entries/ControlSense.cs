namespace Rigging.Squawks.Entries;

/// <summary>What each surface must do for an input called from the cockpit: the truth that the inspection compares with.</summary>
/// <remarks>Wheel or stick left raises the left aileron and lowers the right; left pedal moves the rudder's trailing edge left; wheel back raises the elevator.</remarks>
public static class ControlSense
{
    /// <summary>The same as sentences for a pilot at the wheel: "Wheel left: left aileron up, right aileron down."</summary>
    public static IReadOnlyList<string> Sentences(IEnumerable<string> disturbed) =>
    [
        .. AskFor(disturbed).GroupBy(asked => asked.Input).Select(input =>
            $"{char.ToUpperInvariant(input.Key[0])}{input.Key[1..]}: {string.Join(", ", input.Select(asked => $"{asked.Surface} {asked.Expected.ToString().ToLowerInvariant()}"))}."),
    ];

    /// <summary>The observations asked for after each kind of disturbance. Ailerons are always looked at after work on a wing.</summary>
    public static IReadOnlyList<Observation> AskFor(IEnumerable<string> disturbed)
    {
        var words = string.Join(' ', disturbed).ToLowerInvariant();
        List<Observation> asked =
        [
            new("left aileron", "wheel left", Seen.Up, Seen.NotRecorded),
            new("right aileron", "wheel left", Seen.Down, Seen.NotRecorded),
            new("left aileron", "wheel right", Seen.Down, Seen.NotRecorded),
            new("right aileron", "wheel right", Seen.Up, Seen.NotRecorded),
            new("left flap", "flaps down", Seen.Down, Seen.NotRecorded),
            new("right flap", "flaps down", Seen.Down, Seen.NotRecorded),
        ];
        if (words.Contains("rudder", StringComparison.Ordinal))
            asked.AddRange([new("rudder", "left pedal", Seen.Left, Seen.NotRecorded), new("rudder", "right pedal", Seen.Right, Seen.NotRecorded)]);
        if (words.Contains("elevator", StringComparison.Ordinal))
            asked.AddRange([new("elevator", "wheel back", Seen.Up, Seen.NotRecorded), new("elevator", "wheel forward", Seen.Down, Seen.NotRecorded)]);
        return asked;
    }
}
