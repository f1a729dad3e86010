using System.Text.Json;

namespace Rigging.Mechanics.Contract;

/// <summary>The request's fields, the range each may have, and the values taken when they are not given.</summary>
/// <remarks>Ranges say what is physical for a light aeroplane, not what is usual; common practice, no source.</remarks>
static class RequestReader
{
    public static readonly Within CasKt = new(20, 400, "kt");
    public static readonly Within PressureAltitudeFt = new(-2000, 30_000, "ft");
    public static readonly Within PowerPercent = new(0, 100, "%");
    const double LeastEffectDegPerS = 0.01;

    /// <summary>Of all test points together: a year of flying one complaint; more costs seconds of processor for one answer.</summary>
    public const int MostReadings = 2000;

    static readonly Within Turns = new(-50, 50, "turns");
    static readonly Within EccentricDeg = new(-180, 180, "°");

    public static AssessmentRequest Read(FieldReader request)
    {
        var read = new AssessmentRequest(
            request.TextIfGiven("airframeId", 60),
            request.ObjectIfGiven("airframe", AirframeReader.Read),
            request.ObjectIfGiven("settings", Settings),
            request.FlagIfGiven("straightBefore"),
            request.ListIfGiven("events", 0, 50, (element, path) => Event(request, element, path)),
            request.Shape("trims", (element, path) => TrimsOf(request, element, path)),
            request.WordIfGiven<Autopilot>("autopilot") ?? Autopilot.Unknown,
            request.Objects("testPoints", 0, 200, TestPointOf),
            request.ObjectsIfGiven("groundChecks", 0, 200, GroundCheckReader.Read),
            request.ObjectsIfGiven("earlierCorrections", 0, 200, EarlierCorrectionOf) is { Count: > 0 } earlier ? earlier : null,
            request.FlagIfGiven("fuelAndSeatsMeasured"));
        if (request.Has("airframeId") && request.Has("airframe"))
            request.Refuse("airframe", "airframeId or airframe, not both");
        if (!request.Has("airframeId") && !request.Has("airframe"))
            request.Refuse("airframeId", "an airframeId, or an airframe written out");
        if (read.TestPoints.Sum(point => point?.Readings?.Count ?? 0) is var readings and > MostReadings)
            request.Fault("$.testPoints", $"{readings} readings in all", $"at most {MostReadings}");
        return read;
    }

    static EarlierCorrection EarlierCorrectionOf(FieldReader earlier)
    {
        var modelled = earlier.Number("modelledDegPerS", new(-20, 20, "°/s"));
        if (Math.Abs(modelled) < LeastEffectDegPerS)
            earlier.Refuse("modelledDegPerS", "a change that can be felt, 0.01 °/s or more either way");
        return new(earlier.Word<AdjustableControl>("control") ?? default, modelled,
            earlier.Number("measuredDegPerS", new(-20, 20, "°/s")), earlier.Number("sdDegPerS", new(0.01, 20, "°/s")), earlier.FlagIfGiven("sameAeroplane") ?? false);
    }

    static EccentricSettings Settings(FieldReader settings) => new(
        settings.Shape("leftEccentricDeg", (element, path) => Bushings(settings, element, path)),
        settings.Shape("rightEccentricDeg", (element, path) => Bushings(settings, element, path)),
        settings.NumberIfGiven("leftStrutForkTurns", Turns), settings.NumberIfGiven("rightStrutForkTurns", Turns),
        settings.NumberIfGiven("leftFlapRodTurns", Turns), settings.NumberIfGiven("rightFlapRodTurns", Turns));

    static BushingAngles? Bushings(FieldReader settings, JsonElement element, string path) => element.ValueKind == JsonValueKind.Object
        ? settings.ObjectOf(element, path, bushings => new BushingAngles(bushings.Number("front", EccentricDeg), bushings.Number("rear", EccentricDeg)))
        : new BushingAngles(settings.NumberOf(element, path, EccentricDeg));

    static PastEvent? Event(FieldReader request, JsonElement element, string path)
    {
        var withoutEffect = Wire.Word(EventKind.CorrectionWithoutEffect) + ":";
        if (JsonText.Of(element) is { } text)
        {
            if (Wire.TryRead<EventKind>(text, out var kind) && kind != EventKind.CorrectionWithoutEffect)
                return new PastEvent(kind);
            if (text.StartsWith(withoutEffect, StringComparison.Ordinal) && Wire.TryRead<Cause>(text[withoutEffect.Length..], out var cause))
                return new PastEvent(EventKind.CorrectionWithoutEffect, cause);
        }
        var words = Wire.Words<EventKind>().Where(word => word != Wire.Word(EventKind.CorrectionWithoutEffect));
        request.Fault(path, JsonText.Seen(element), $"one of {string.Join(", ", words)}, or {withoutEffect} and one of {string.Join(", ", Wire.Words<Cause>())}");
        return null;
    }

    static Trims? TrimsOf(FieldReader request, JsonElement element, string path)
    {
        if (JsonText.Of(element) == Trims.None)
            return new Trims(Trims.None, Trims.None);
        if (element.ValueKind == JsonValueKind.Object)
            return request.ObjectOf(element, path, trims => new Trims(Position(trims, "roll"), Position(trims, "yaw")));
        request.Fault(path, JsonText.Seen(element), "none, or an object with roll and yaw");
        return null;
    }

    /// <summary>Nobody computes with it: a number is kept as it was written.</summary>
    static string Position(FieldReader trims, string name) => trims.Shape(name, (element, path) => element.ValueKind == JsonValueKind.Number
        ? FormattableString.Invariant($"{trims.NumberOf(element, path, new(-1000, 1000))}")
        : trims.TextOf(element, path, 40)) ?? Trims.None;

    static TestPoint TestPointOf(FieldReader point)
    {
        var manoeuvre = point.Word<Manoeuvre>("manoeuvre") ?? default;
        var casKt = point.Number("casKt", CasKt);
        var pressureAltitudeFt = point.Number("pressureAltitudeFt", PressureAltitudeFt);
        return new TestPoint(
            manoeuvre,
            casKt,
            pressureAltitudeFt,
            point.NumberIfGiven("oatC", new(-60, 60, "°C")) ?? TestPoint.StandardOatC(pressureAltitudeFt),
            point.NumberIfGiven("powerPercent", PowerPercent),
            point.NumberIfGiven("flapDeg", new(-20, 60, "°")) ?? 0,
            point.Object("load", LoadReader.Read),
            point.WordIfGiven<AirState>("air") ?? AirState.Smooth,
            point.WordIfGiven<Side>("lastInput"),
            point.WholeIfGiven("repeat", 1, 1000),
            point.Objects("readings", 1, 100, ReadingReader.Read),
            point.ObjectsIfGiven("movedSince", 0, 20, moved => new KnownChange(moved.Word<Cause>("cause") ?? default, moved.Number("amplitude", new(-100, 100)))) is { Count: > 0 } changes ? changes : null);
    }
}
