using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>How the trims stood and what the autopilot did on the flights whose readings count.</summary>
static class FlownTrims
{
    /// <summary>
    /// Without the flights that a trim or the autopilot held, where a later one was flown and read without that. Where none was, such a
    /// flight stays, and what is made of it refuses.
    /// </summary>
    public static IReadOnlyList<Entry> WithoutPutRight(IReadOnlyList<Entry> counted, List<string> assumed)
    {
        List<Entry> speaking = [];
        foreach (var entry in counted)
        {
            if (entry.Fact is IFlown { Trims: { } trims } flown && trims.WhatHeld() is { } held && counted.Any(later => later.Sequence > entry.Sequence && WasReadWithout(held, later.Fact)))
                assumed.Add($"The flight on {flown.FlownOn:uuuu-MM-dd} was left aside: flown with {Words.Trims(held)}, its readings cannot be compared with those of a later one that was flown without.");
            else
                speaking.Add(entry);
        }
        return speaking;
    }

    static bool WasReadWithout(TrimsFlown held, Fact later) =>
        later is IFlown { Trims: { } trims } flown && trims.PutsRight(held) && JsonNode.Parse(flown.TestPoints) is JsonArray { Count: > 0 };

    /// <summary>
    /// Each from the latest of the flights that has it on record; a flight that was held goes before those that were not, for its readings are
    /// among the others.
    /// </summary>
    public static void Into(JsonObject request, IEnumerable<Entry> flights)
    {
        var told = flights.Select(entry => (entry.Fact as IFlown)?.Trims).OfType<TrimsFlown>().OrderBy(trims => trims.WhatHeld() is not null).ToList();
        var places = new JsonObject();
        if (told.LastOrDefault(trims => trims.Roll is not null) is { Roll: { } roll }) places["roll"] = roll == RollTrim.NotFitted ? Trims.None : Words.Of(roll);
        if (told.LastOrDefault(trims => trims.Yaw is not null) is { Yaw: { } yaw }) places["yaw"] = yaw == YawTrim.NotFitted ? Trims.None : Words.Of(yaw);
        if (places.Count > 0) request["trims"] = places;
        if (told.LastOrDefault(trims => trims.Autopilot is not null) is { Autopilot: { } autopilot }) request["autopilot"] = Wire.Word(Of(autopilot));
    }

    static Autopilot Of(FlownAutopilot autopilot) => autopilot switch
    {
        FlownAutopilot.Off => Autopilot.Off,
        FlownAutopilot.Disconnected => Autopilot.Disconnected,
        FlownAutopilot.Engaged => Autopilot.Engaged,
        FlownAutopilot.NotFitted => Autopilot.None,
        _ => throw new ArgumentOutOfRangeException(nameof(autopilot)),
    };
}
