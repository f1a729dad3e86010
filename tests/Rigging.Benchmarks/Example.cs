using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Benchmarks;

/// <summary>The contract's own example.</summary>
static class Example
{
    public static Airframe Airframe { get; } = ContractReader.ReadAirframe(Text("airframe.example.json")).Value!;

    public static AssessmentRequest Request { get; } = ContractReader.ReadRequest(Text("assessment-request.example.json")).Value!;

    public static FlightPoint Point { get; } = new Aeroplane(Airframe).At(Request.TestPoints[0]);

    static string Text(string file) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", file));
}
