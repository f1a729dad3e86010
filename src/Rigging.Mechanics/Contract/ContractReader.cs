using System.Text.Json;

namespace Rigging.Mechanics.Contract;

/// <summary>
/// Reads the contract's forms strictly: a wrong type, an unknown, missing or repeated field, a wrong word or a number out
/// of physical range is a fault, and every fault is listed. No text whatever makes it throw.
/// </summary>
public static class ContractReader
{
    public static ReadResult<Airframe> ReadAirframe(string json) => Read(json, AirframeReader.Read, _ => []);

    /// <summary>Loads are held against the airframe when it is written out; for one named by its id use <see cref="Check"/>.</summary>
    public static ReadResult<AssessmentRequest> ReadRequest(string json) =>
        Read(json, RequestReader.Read, request => request.Airframe is { } airframe ? Check(request, airframe) : []);

    /// <summary>What in a well-formed request does not fit the airframe: seats, compartments and tanks it does not have, a tank overfull or not stated.</summary>
    public static IReadOnlyList<Fault> Check(AssessmentRequest request, Airframe airframe)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(airframe);
        var faults = new List<Fault>();
        for (var index = 0; index < request.TestPoints.Count; index++)
        {
            // Null only while a faulty request is still being read.
            if (request.TestPoints[index]?.Load is { } load)
                LoadReader.Check(load, airframe, $"$.testPoints[{index}].load", (path, seen, wanted) => faults.Add(new(path, seen, wanted)));
        }
        return faults;
    }

    static ReadResult<T> Read<T>(string json, Func<FieldReader, T> read, Func<T, IReadOnlyList<Fault>> check) where T : class
    {
        ArgumentNullException.ThrowIfNull(json);
        try
        {
            using var document = JsonDocument.Parse(json);
            var faults = new List<Fault>();
            var value = FieldReader.Read(document.RootElement, "$", faults, read);
            if (value is not null)
                faults.AddRange(check(value));
            return new(value, faults);
        }
        catch (JsonException broken)
        {
            return new(null, [new("$", $"line {broken.LineNumber + 1}, byte {broken.BytePositionInLine + 1}", "JSON, nested at most 64 deep")]);
        }
        catch (ArgumentException)
        {
            // Half a surrogate pair cannot be written as UTF-8, and the parser says so in this way.
            return new(null, [new("$", null, "text in valid Unicode")]);
        }
    }
}
