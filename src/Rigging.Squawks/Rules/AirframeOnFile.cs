using System.Text.Encodings.Web;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;

namespace Rigging.Squawks.Rules;

/// <summary>One version of an airframe file, and what the rules need of it.</summary>
/// <param name="EccentricMaxAngleDeg">Where the stop is, either way from neutral; null when the eccentric's data is not on file.</param>
/// <param name="RigidPanel">The bracing lets a panel turn as one piece, so that incidence follows the eccentric.</param>
/// <param name="Json">The airframe file as entered, with the load that the aircraft itself is rigged for where one was chosen.</param>
public sealed record AirframeOnFile(string Id, int Version, double? EccentricMaxAngleDeg, bool RigidPanel, string Json)
{
    /// <summary>Null when the text is not an airframe file; whoever stores one has checked it.</summary>
    /// <param name="riggedForLoad">In the form of the file's own; null for that.</param>
    public static AirframeOnFile? Of(string id, int version, string json, string? riggedForLoad = null)
    {
        if (riggedForLoad is not null) json = With(json, riggedForLoad);
        return ContractReader.ReadAirframe(json).Value is { } airframe
            ? new(id, version, airframe.Eccentric?.MaxAngleDeg, airframe.Wing.Bracing is Bracing.SingleStrutAtFrontSpar or Bracing.Cantilever, json)
            : null;
    }

    static string With(string json, string load)
    {
        var file = JsonNode.Parse(json)!;
        file["reference"]!["load"] = JsonNode.Parse(load);
        return file.ToJsonString(new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
    }

    /// <exception cref="InvalidOperationException">The stored text is not an airframe file.</exception>
    public Airframe Read() => ContractReader.ReadAirframe(Json).Value
        ?? throw new InvalidOperationException($"Airframe {Id}, version {Version}, is not an airframe file.");
}
