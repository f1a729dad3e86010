using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Survey;
using Rigging.Mechanics.Travel;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using UnitsNet;
using Side = Rigging.Squawks.Entries.Side;

namespace Rigging.Squawks.Rules;

/// <summary>What the program knows of a check better than the page: what the airframe file allows, and what a survey's readings come to.</summary>
static class FileLimits
{
    /// <summary>Common practice, no source: no tail wags more than this, and no level laid by hand seats worse.</summary>
    const double MostReadingDeg = 45;

    public static GroundChecked Beside(GroundChecked check, SquawkState state, Facts facts)
    {
        if (check.NotApplicableReason is not null) return check with { Limits = null, NoLimitsBecause = null, CablesOnFile = null };
        // A file is long, and most checks ask nothing of it.
        if (check.Check is not (Check.CableTension or Check.ControlTravel) && check.Survey is null) return check with { TipValue = null, TipSd = null, Limits = null, NoLimitsBecause = null, CablesOnFile = null };
        var airframe = facts.Airframe?.Read();
        var (limits, because) = check.Check switch
        {
            Check.CableTension => Tension(check, airframe),
            Check.ControlTravel => Travel(check, airframe, state),
            _ => (null, null),
        };
        check = check with
        {
            Limits = limits,
            NoLimitsBecause = because,
            CablesOnFile = check.Check == Check.CableTension && Cables(airframe) is { Count: > 0 } named ? named : null,
        };
        return check.Survey is null ? check with { TipValue = null, TipSd = null }
            : airframe is not null && Survey(check.Survey, airframe).Value is { } survey ? check with
            {
                Value = Round(survey.PanelDifference.Value),
                Sd = Round(survey.PanelDifference.Sd),
                TipValue = survey.TipDifference is { } tip ? Round(tip.Value) : null,
                TipSd = survey.TipDifference is { } sure ? Round(sure.Sd) : null,
            }
            : check with { Value = null, Sd = null, TipValue = null, TipSd = null };
    }

    /// <summary>Every cable that the airframe file names; empty where it names none.</summary>
    public static IReadOnlyList<string> Cables(Airframe? airframe) => [.. (airframe?.Cables ?? []).Select(cable => cable.Name)];

    public static CableOnFile? Cable(Airframe? airframe, string? name) =>
        airframe?.Cables?.FirstOrDefault(cable => string.Equals(cable.Name, name?.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>What is wrong with a survey's readings; empty when nothing is.</summary>
    public static IEnumerable<BrokenRule> Faults(LevelSurvey survey, Facts facts)
    {
        if (facts.Airframe?.Read() is not { } airframe)
            return [new("airframe-data-missing", "This aircraft has no airframe data on file, so where its panels begin and end is not known. The maintenance office can enter it.", "survey")];
        if (!(survey.StepDeg > 0 && survey.StepDeg <= 1)) return [new("value-out-of-range", $"A level that shows steps of {Words.Number(survey.StepDeg)}° cannot be: wanted more than 0, at most 1.", "stepDeg")];
        if (!(survey.SeatingDeg >= 0 && survey.SeatingDeg <= 1)) return [new("value-out-of-range", $"A template that seats {Words.Number(survey.SeatingDeg)}° otherwise cannot be: wanted 0 to 1.", "seatingDeg")];
        if (survey.Readings.FirstOrDefault(reading => !(Math.Abs(reading.AsLaidDeg) <= MostReadingDeg && Math.Abs(reading.ReversedDeg) <= MostReadingDeg)) is { } far)
            return [new("value-out-of-range", $"{Words.Number(far.AsLaidDeg)}° and {Words.Number(far.ReversedDeg)}° reversed cannot be: wanted at most {Words.Number(MostReadingDeg)}° either way.", "survey")];
        if (survey.Readings.FirstOrDefault(reading => reading.Wing is not (Side.Left or Side.Right)) is not null)
            return [new("side-missing", "Say which wing each reading belongs to.", "survey")];
        return Survey(survey, airframe).Refusals.Select(refusal => new BrokenRule(refusal.Code, refusal.Sentence, "survey"));
    }

    public static Mechanics.Answer<WingSurvey> Survey(LevelSurvey survey, Airframe airframe) => WingSurvey.From(
        airframe.Wing,
        [.. survey.Readings.Where(reading => reading.OutM is null).GroupBy(reading => reading.Wing).Select(wing => new SurveyDatum(Wing(wing.Key), [.. wing.Select(Reversed)]))],
        [.. survey.Readings.Where(reading => reading.OutM is not null).GroupBy(reading => (reading.Wing, reading.OutM))
            .Select(station => new SurveyStation(Wing(station.Key.Wing), Length.FromMeters(station.Key.OutM!.Value), [.. station.Select(Reversed)]))],
        Angle.FromDegrees(survey.StepDeg), Angle.FromDegrees(survey.SeatingDeg));

    static (IReadOnlyList<AgainstLimit>?, string?) Tension(GroundChecked check, Airframe? airframe)
    {
        if (check is not { Value: { } measured, TemperatureC: { } degC }) return (null, null);
        if (Cable(airframe, check.Cable) is not { Tension: { } onFile } cable) return (null, "No tension of this cable is on file.");
        return cable.At(Temperature.FromDegreesCelsius(degC)) is { Value: { } wanted }
            ? ([new(cable.Name, measured, Math.Round(wanted.Least.Newtons, 1), Math.Round(wanted.Greatest.Newtons, 1), "N", onFile.Source, wanted.IsEstimate)], null)
            : (null, string.Join(' ', cable.At(Temperature.FromDegreesCelsius(degC))!.Refusals.Select(refusal => refusal.Sentence)));
    }

    static (IReadOnlyList<AgainstLimit>?, string?) Travel(GroundChecked check, Airframe? airframe, SquawkState state)
    {
        if (check.Travel is not { } travel) return (null, null);
        if (airframe?.Travel?.FirstOrDefault(limits => limits.Surface == travel.Surface) is not { } onFile)
            return (null, $"No travel of the {Wire.Word(travel.Surface)} is on file.");
        var limits = onFile.Limits();
        var findings = OtherSide(travel, state) is not { } other ? ControlTravel.Of(Of(travel), limits)
            : travel.Side == Side.Left ? [.. ControlTravel.Of(Of(travel), limits), .. ControlTravel.OfPair(Of(travel), Of(other), limits).Skip(4)]
            : [.. ControlTravel.Of(Of(travel), limits), .. ControlTravel.OfPair(Of(other), Of(travel), limits).Skip(4)];
        return ([.. findings.Select(finding => new AgainstLimit(finding.What, Round(finding.Measured), Round(finding.Least), Round(finding.Greatest), "°", onFile.Source, false))], null);
    }

    // Before the work is one state of the aircraft, since it began another.
    static TravelMeasured? OtherSide(TravelMeasured travel, SquawkState state) => state.Checks.Values
        .Where(last => last.Fact.Travel is { } other && other.Surface == travel.Surface && other.Side is not null && other.Side != travel.Side
            && (state.MovedAt is null || state.IsSinceMoved(last.At)))
        .Select(last => last.Fact.Travel).FirstOrDefault();

    static SurfaceTravel Of(TravelMeasured travel) => new(Words.Surface(travel), Angle.FromDegrees(travel.UpDeg), Angle.FromDegrees(travel.DownDeg));

    static ReversedReading Reversed(LevelReading reading) => new(Angle.FromDegrees(reading.AsLaidDeg), Angle.FromDegrees(reading.ReversedDeg));

    static Mechanics.Contract.Side Wing(Side side) => side == Side.Left ? Mechanics.Contract.Side.Left : Mechanics.Contract.Side.Right;

    static double Round(Angle angle) => Math.Round(angle.Degrees, 4);
}
