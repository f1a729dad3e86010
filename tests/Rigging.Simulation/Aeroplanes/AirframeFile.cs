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

    readonly JsonObject filed;

    public AirframeFile(JsonObject json) : this(json, json, new Dictionary<string, double>())
    {
    }

    AirframeFile(JsonObject json, JsonObject filed, IReadOnlyDictionary<string, double> accuracies)
    {
        (this.json, this.filed, Accuracies) = (json, filed, accuracies);
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

    /// <summary>The same three wings, on aeroplanes of which nobody filed more than what can be measured and weighed.</summary>
    public static IReadOnlyList<AirframeFile> ByGeometry { get; } = [OfGeometry("st2"), OfGeometry("hs2"), OfGeometry("lw4")];

    public static AirframeFile Named(string id) => Known.GetOrAdd(id, static name => new(Resource(name)));

    /// <summary>
    /// The file says wing, tail, mass, tanks and seats; the derivatives and inertias that such an aeroplane usually has, and how far a textbook's
    /// figures for them may be out, stand beside it here and are told to nobody.
    /// </summary>
    static AirframeFile OfGeometry(string wing)
    {
        var (json, measured) = (Resource(wing), Resource(wing + "-geometry"));
        json["id"] = (string)measured["id"]!;
        json["name"] = (string)measured["name"]!;
        foreach (var (part, value) in measured["measured"]!.AsObject())
            if (value is JsonObject fields && json[part] is JsonObject known)
                foreach (var (field, number) in fields)
                    known[field] = number!.DeepClone();
            else
                json[part] = value!.DeepClone();
        var filed = json.DeepClone().AsObject();
        filed.Remove("derivatives");
        foreach (var inertia in (string[])["ixxKgM2", "izzKgM2", "ixzKgM2"])
            filed["mass"]!.AsObject().Remove(inertia);
        var usual = measured["usual"]!.AsObject();
        foreach (var (figure, value) in usual)
            json[figure.EndsWith("KgM2", StringComparison.Ordinal) ? "mass" : "derivatives"]![figure] = (double)value!["value"]!;
        return new(json, filed, usual.ToDictionary(figure => figure.Key, figure => (double)figure.Value!["accuracyPercent"]! / 100));
    }

    static JsonObject Resource(string name)
    {
        using var stream = typeof(AirframeFile).Assembly.GetManifestResourceStream(name + ".json") ?? throw new ArgumentException($"No airframe {name}.");
        return JsonNode.Parse(stream)!.AsObject();
    }

    public string Id { get; }

    /// <summary>Everything that is so of the type.</summary>
    public JsonObject Json => json.DeepClone().AsObject();

    /// <summary>What is on file about it.</summary>
    public JsonObject Filed => filed.DeepClone().AsObject();

    /// <summary>Of each figure that is not on file, how far a textbook may be out, one standard deviation as a share; empty where all is.</summary>
    public IReadOnlyDictionary<string, double> Accuracies { get; }

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
