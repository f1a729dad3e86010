using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using Rigging.Simulation.Wing;

namespace Rigging.Simulation.Aeroplanes;

/// <summary>Coefficients as in stability reports, per radian and per pb/2V, rb/2V.</summary>
public sealed record Derivatives(
    double CyBeta, double ClBeta, double ClR, double CnBeta, double CnP, double CnR,
    double CyRudder, double ClRudder, double CnRudder, double CnAileron, double SlipstreamCl, double SlipstreamCn);

/// <summary>One airframe of the contract's form as this generator reads it: lengths in metres, angles in radians unless the name says otherwise.</summary>
public sealed class AirframeFile
{
    static readonly ConcurrentDictionary<string, AirframeFile> Known = new();
    readonly JsonObject json;

    public AirframeFile(JsonObject json)
    {
        this.json = json;
        Id = (string)json["id"]!;
        Stations = [.. json["wing"]!["stations"]!.AsArray().Select(s => new Station(
            (double)s!["yM"]!, (double)s["chordM"]!, Radians((double)s["incidenceDeg"]!), (double)s["sectionLiftSlopePerRad"]!))];
        Tanks = Arms("tanks");
        Seats = Arms("seats");
        Derivatives = new(
            D("cYBeta"), D("clBeta"), D("clR"), D("cnBeta"), D("cnP"), D("cnR"), D("cYRudder"), D("clRudder"), D("cnRudder"), D("cnAileron"),
            D("slipstreamClAtFullPower"), D("slipstreamCnAtFullPower"));
        Wing = new(this);
    }

    /// <summary>The invented airframes: st2 (the contract's example), hs2 (light strutted high-wing), lw4 (cantilever low-wing).</summary>
    public static IReadOnlyList<AirframeFile> All => [Named("st2"), Named("hs2"), Named("lw4")];

    public static AirframeFile Named(string id) => Known.GetOrAdd(id, static name =>
    {
        using var stream = typeof(AirframeFile).Assembly.GetManifestResourceStream(name + ".json") ?? throw new ArgumentException($"No airframe {name}.");
        return new(JsonNode.Parse(stream)!.AsObject());
    });

    public string Id { get; }

    public JsonObject Json => json.DeepClone().AsObject();

    public IReadOnlyList<Station> Stations { get; }

    public WingNumbers Wing { get; }

    public Derivatives Derivatives { get; }

    public IReadOnlyDictionary<string, double> Tanks { get; }

    public IReadOnlyDictionary<string, double> Seats { get; }

    public double Span => At("wing", "spanM");

    public double PanelInboard => At("wing", "panelInboardYM");

    public double SparSpacing => At("wing", "sparSpacingM");

    public double Throw => At("eccentric", "throwMm") / 1000;

    public double HeadFlats => At("eccentric", "headFlats");

    public double MaxEccentricDeg => At("eccentric", "maxAngleDeg");

    public double AileronInboard => At("ailerons", "inboardYM");

    public double AileronOutboard => At("ailerons", "outboardYM");

    public double AileronChordFraction => At("ailerons", "chordFraction");

    public double WheelPerAileron => At("ailerons", "wheelDegPerAileronDeg");

    public double ForcePerAileronDeg => At("ailerons", "wheelForceNPerAileronDegAtReference");

    public (bool OnRight, double Gain) AileronTab => ((string)json["ailerons"]!["fixedTab"]!["side"]! == "right", (double)json["ailerons"]!["fixedTab"]!["gain"]!);

    public double RudderTabGain => At("rudder", "fixedTabGain");

    public double FlapInboard => At("flaps", "inboardYM");

    public double FlapOutboard => At("flaps", "outboardYM");

    public double FlapChordFraction => At("flaps", "chordFraction");

    public double Mass => At("mass", "referenceKg");

    public double Ixx => At("mass", "ixxKgM2");

    public double Izz => At("mass", "izzKgM2");

    public double Ixz => At("mass", "ixzKgM2");

    public double BallDegPerWidth => (double)json["ballDegPerWidth"]!;

    public double StallKt => At("speedsKt", "stallClean");

    public double CruiseLimitKt => At("speedsKt", "maxStructuralCruise");

    public double ReferenceKt => At("reference", "casKt");

    public double ReferenceFt => At("reference", "pressureAltitudeFt");

    public double ReferencePower => At("reference", "powerPercent") / 100;

    public JsonObject ReferenceLoad => json["reference"]!["load"]!.DeepClone().AsObject();

    public double AcceptableDegPerS => At("limits", "acceptableRollTendencyDegPerS");

    public double MaxPanelDeg => At("limits", "maxPanelIncidenceDifferenceDeg");

    public static double Radians(double degrees) => degrees * Math.PI / 180;

    double At(string group, string name) => (double)json[group]![name]!;

    double D(string name) => (double)json["derivatives"]![name]!;

    Dictionary<string, double> Arms(string name) => json[name]!.AsArray().ToDictionary(x => (string)x!["name"]!, x => (double)x!["armM"]!);
}
