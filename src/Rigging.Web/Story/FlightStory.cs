using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;
using static Rigging.Web.Desk.ReadingWords;

namespace Rigging.Web.Story;

/// <summary>Flights in words. Stored readings are read leniently: an old or odd one is shown as far as it can be read, and said so.</summary>
static class FlightStory
{
    public static Told Of(EvaluationFlown flown) => new(Gaps.Fill(Say.EvaluationFlightOn, $"{flown.FlownOn:uuuu-MM-dd}"), [.. Trims(flown.Trims), .. Points(flown.TestPoints), .. Line.Quote(flown.Remarks)]);

    public static Told Of(CheckFlown flown) => new(Gaps.Fill(Say.CheckFlightOn, $"{flown.FlownOn:uuuu-MM-dd}"),
    [
        flown.Satisfactory ? new(Say.SatisfactorySafeToCarryPassengers, Tone.Good) : new Line(Say.NotSatisfactory, Tone.Stop),
        Gaps.Fill(Say.HNoPassengersNoStudents, Words.Number(flown.DurationH, 1), flown.SecondCrewDuty is { } duty ? Gaps.Fill(Say.SecondCrewMember, duty) : Say.Alone),
        .. Trims(flown.Trims),
        .. Points(flown.TestPoints),
        flown.FuelMeasured ? Say.FuelOnEachSideWasMeasured : new Line(Say.FuelOnEachSideWasNot, Tone.Missing),
        flown.StallsFlown ? Say.StallWasFlownAndComparedWithBaseline : Gaps.Fill(Say.StallNotFlownBecause, flown.StallsNotFlownBecause ?? Say.NotNeededAfterThisWork),
        flown.EveryFlapSetting ? Say.EachFlapSettingWasFlown : Gaps.Fill(Say.NotEveryFlapSetting, flown.FlapsNotFlownBecause ?? Say.NotNeededAfterThisWork),
        .. Line.Quote(flown.Remarks),
    ]);

    // Nothing recorded is not said to be missing: nobody was asked on flights of before.
    static IEnumerable<Line> Trims(TrimsFlown? trims) =>
        trims is null ? [] : [new(Gaps.Fill(Say.TrimsAndAutopilot, Words.Trims(trims)), trims.WhatHeld() is null ? Tone.Plain : Tone.Caution)];

    /// <summary>A line for each test point.</summary>
    static IEnumerable<Line> Points(string json)
    {
        if (Parse(json) is not JsonArray points) return [new(Say.ReadingsCannotBeRead, Tone.Missing)];
        return points.Count == 0 ? [new(Say.NoReadingsWereTaken, Tone.Missing)] : points.OfType<JsonObject>().Select(point => (Line)PointOf(point));
    }

    static string PointOf(JsonObject point)
    {
        var manoeuvre = Text(point["manoeuvre"]) is { } word && Wire.TryRead<Manoeuvre>(word, out var known) ? Words.Of(known) : Say.ManoeuvreNotRecorded;
        string?[] conditions =
        [
            Number(point["casKt"]) is { } kt ? $"{Words.Number(kt, 0)}{Space}kt" : null,
            Number(point["pressureAltitudeFt"]) is { } ft ? $"{Words.Number(ft, 0)}{Space}ft" : null,
            Number(point["powerPercent"]) is { } power ? Gaps.Fill(Say.PowerInText, Words.Number(power, 0)) : null,
            Number(point["flapDeg"]) is { } flap and not 0 ? Gaps.Fill(Say.FlapInText, Words.Number(flap, 0)) : null,
            point["load"] is JsonObject load ? Load(load) : null,
        ];
        var readings = point["readings"] is JsonArray list ? list.OfType<JsonObject>().Select(ReadingWords.Of).ToList() : [];
        var said = readings.Count == 0 ? Say.NothingRead : string.Join("; ", readings);
        return $"{Words.Capital(manoeuvre)}, {string.Join(", ", conditions.OfType<string>())}: {said}.";
    }

    static string? Load(JsonObject load) => load["fuelL"] is JsonObject { Count: > 0 } fuel
        ? Gaps.Fill(Say.Fuel, string.Join(", ", fuel.Select(tank => $"{tank.Key} {(Number(tank.Value) is { } litres ? $"{Words.Number(litres, 0)}{Space}L" : Say.NotKnown)}")))
        : null;

    internal static JsonNode? Parse(string json)
    {
        try
        {
            return JsonNode.Parse(json);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
