using System.Text.Json.Nodes;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

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

    static IEnumerable<Line> Points(string json) =>
        ReadingWords.Points(json).Select(said => ReadingWords.Parse(json) is JsonArray { Count: > 0 } ? (Line)said : new Line(said, Tone.Missing));
}
