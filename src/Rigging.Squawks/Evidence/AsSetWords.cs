using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Rigging.Mechanics.Contract;

namespace Rigging.Squawks.Evidence;

/// <summary>
/// Trims and autopilot out of the pilot's own words on how they were set. Only what is named is taken, and a trim's place is handed on as it was
/// written; everything else stays words for a person.
/// </summary>
static partial class AsSetWords
{
    /// <summary>Puts what the words name into the request, and says so.</summary>
    public static void Into(JsonObject request, string? words, List<string> assumed)
    {
        if (string.IsNullOrWhiteSpace(words)) return;
        var (roll, yaw, autopilot) = (null as string, null as string, null as Autopilot?);
        foreach (var clause in words.Split([',', ';', '.', '\n'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (RollTrim().Match(clause) is { Success: true } rolled) roll = Place(rolled);
            else if (YawTrim().Match(clause) is { Success: true } yawed) yaw = Place(yawed);
            else if (AutopilotNamed().Match(clause) is { Success: true } named) autopilot = Of(named.Groups["state"].Value.ToLowerInvariant());
        }
        if (roll is not null || yaw is not null) request["trims"] = new JsonObject { ["roll"] = roll ?? Trims.None, ["yaw"] = yaw ?? Trims.None };
        if (autopilot is { } state) request["autopilot"] = Wire.Word(state);
        string?[] taken = [roll is null ? null : $"roll trim {roll}", yaw is null ? null : $"yaw trim {yaw}", autopilot is { } flown ? $"autopilot {Wire.Word(flown)}" : null];
        assumed.Add(taken.OfType<string>().ToArray() is { Length: > 0 } read
            ? $"Set by the pilot: “{words}”. Taken from it: {string.Join(", ", read)}."
            : $"Set by the pilot: “{words}”. Nothing of it is computed with; fly the next flight with the trims at neutral and the autopilot off.");
    }

    const int LongestPlace = 40;

    static string Place(Match match) => match.Groups["at"].Value.Trim() is var at && at.Length > LongestPlace ? at[..LongestPlace] : at;

    static Autopilot Of(string state) => state switch
    {
        "on" or "engaged" => Autopilot.Engaged,
        "disconnected" => Autopilot.Disconnected,
        "none" => Autopilot.None,
        _ => Autopilot.Off,
    };

    [GeneratedRegex(@"^(the\s+)?(aileron|roll)\s+trim\s*(was|at|:)?\s+(?<at>\S.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex RollTrim();

    [GeneratedRegex(@"^(the\s+)?(rudder|yaw)\s+trim\s*(was|at|:)?\s+(?<at>\S.*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex YawTrim();

    [GeneratedRegex(@"^(the\s+)?(autopilot|auto-pilot|a/p)\s*(was|:)?\s+(?<state>on|engaged|off|disconnected|none)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AutopilotNamed();
}
