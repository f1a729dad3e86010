using System.Text.Json;
using System.Text.Json.Serialization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// What experience adds to physics: how often a cause is found and how far it is out, what past events make of that, how
/// well people read, how long a check takes. Data, in <c>practice.json</c>; each figure there has its reason.
/// </summary>
/// <param name="Version">Goes on record with every assessment; changes with any figure.</param>
public sealed record Practice(
    string Version,
    string Basis,
    IReadOnlyList<CausePrior> Causes,
    IReadOnlyList<OddsShift> Shifts,
    IReadOnlyList<SpreadShift> SpreadShifts,
    double WithoutEffectOdds,
    IReadOnlyList<WithoutEffectFigure> WithoutEffect,
    double ModelError,
    IReadOnlyList<ModelErrorTimes> ModelErrorTimes,
    IReadOnlyList<ReadingSd> Readings,
    IReadOnlyDictionary<AirState, double> Turbulence,
    IReadOnlyList<StrengthRange> Strengths,
    WordsFigure Words,
    IReadOnlyList<CheckFigure> GroundChecks,
    CausePrior Adjusted,
    Effort FuelMeasured,
    Effort EvaluationPoint,
    Effort FuelBalanced)
{
    static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    /// <summary>The figures this library ships.</summary>
    public static Practice Usual { get; } = Load();

    /// <summary>The same, but fuel was measured and everybody weighed: what remains unreported is small. Another version, and says so.</summary>
    public Practice WithFuelMeasured() => this with
    {
        Version = $"{Version}, fuel measured",
        Causes = [.. Causes.Select(prior => prior.Cause == Cause.FuelAndLoading ? prior with { Spread = FuelMeasured.Sd } : prior)],
    };

    /// <summary>Whether the aeroplane was adjusted before some of what was flown.</summary>
    [JsonIgnore]
    public bool IsAdjusted { get; private init; }

    /// <summary>The same of an aeroplane that was adjusted. Another version, and says so.</summary>
    public Practice AfterAdjusting() => this with { Version = $"{Version}, after adjusting", IsAdjusted = true };

    /// <summary>The same, something being left of what was adjusted.</summary>
    internal Practice WithSomethingLeft() => this with { Causes = [.. Causes.Select(prior => prior.Cause == Adjusted.Cause ? Adjusted : prior)] };

    /// <summary>The same for one airframe, with what is known better of its type.</summary>
    internal Practice For(Airframe airframe) => airframe.Priors is not { Count: > 0 } known ? this : this with
    {
        Causes = [.. Causes.Select(prior => known.SingleOrDefault(one => one.Cause == prior.Cause) is { } better
            ? prior with { Probability = better.Probability ?? prior.Probability, Spread = better.Spread ?? prior.Spread, Reason = better.Reason }
            : prior)],
    };

    internal CausePrior Prior(Cause cause) => Causes.Single(prior => prior.Cause == cause);

    /// <summary>Of a reading, for every trace and last for what is known.</summary>
    internal double[] ErrorTimes(ReadingKind reading)
    {
        var figures = ModelErrorTimes.Where(figure => figure.Readings.Contains(reading)).ToArray();
        double Of(Cause? cause) => (figures.FirstOrDefault(figure => cause is { } c && figure.Causes?.Contains(c) == true)
            ?? figures.FirstOrDefault(figure => figure.Causes is null))?.Times ?? 1;
        return [.. ModelledCause.Traces.Select(trace => Of(trace.Cause)), Of(null)];
    }

    internal CheckFigure? Check(GroundCheckKind kind) => GroundChecks.SingleOrDefault(check => check.Check == kind);

    internal ReadingSd Sd(ReadingKind kind, ReadingMethod method)
    {
        var known = Readings.Where(reading => reading.Kind == kind).ToArray();
        return known.FirstOrDefault(reading => reading.Method == method)
            ?? known.Single(reading => reading.Method == ReadingMethod.Eye);
    }

    static Practice Load()
    {
        using var stream = typeof(Practice).Assembly.GetManifestResourceStream("practice.json")!;
        return JsonSerializer.Deserialize<Practice>(stream, Form)!;
    }
}

/// <param name="Unit">Of the amplitude.</param>
/// <param name="Probability">That it is behind a complaint, before any evidence.</param>
/// <param name="Spread">Standard deviation of the amplitude when it is.</param>
/// <param name="ScaleError">As a share: by how much everything that one unit of it does is uncertain together, so that no number of readings narrows it.</param>
/// <param name="Mean">Of the amplitude when it is; 0 for what may go either way.</param>
public sealed record CausePrior(Cause Cause, string Unit, double Probability, double Spread, string Reason, double Mean = 0, double ScaleError = 0);

/// <summary>Odds of a cause are multiplied when something is known to have happened.</summary>
/// <param name="When">An event's word, <c>straight-before</c>, <c>never-straight</c>, or <c>autopilot-</c> and its word.</param>
public sealed record OddsShift(string When, Cause Cause, double Odds, string Reason);

/// <summary>By how often the usual model error a reading is uncertain that a cause makes; with no cause named, what every cause makes that is not.</summary>
public sealed record ModelErrorTimes(IReadOnlyList<ReadingKind> Readings, IReadOnlyList<Cause>? Causes, double Times, string Reason);

/// <summary>The amplitude of a cause spreads so many times further when something is known to have happened.</summary>
public sealed record SpreadShift(string When, Cause Cause, double Times, string Reason);

/// <summary>By how much a correction that changed nothing lowers the odds of the cause it was meant for, where it is not as telling as usual.</summary>
public sealed record WithoutEffectFigure(Cause Cause, double Odds, string Reason);

/// <summary>Standard deviation of a reading: a fixed part and a share of what was read.</summary>
public sealed record ReadingSd(ReadingKind Kind, ReadingMethod Method, double Sd, double Share);

/// <summary>What a pilot's word for a roll stands for.</summary>
/// <param name="ToDegPerS">Null when there is no end.</param>
public sealed record StrengthRange(RollStrength Strength, double FromDegPerS, double? ToDegPerS = null);

/// <param name="Sd">How soft the ends of a word's range are, °/s in smooth air.</param>
public sealed record WordsFigure(double Sd, string Reason);

/// <summary>A ground check: what it takes and how good it is.</summary>
/// <param name="Sd">Of the amplitude it measures, in the cause's unit; null for a look that only finds something or nothing.</param>
/// <param name="Finds">Of a look: how often it finds what is there.</param>
/// <param name="Usual">What is measured where nothing is wrong, and <paramref name="UsualSd"/> how far that differs.</param>
/// <param name="FalseAlarm">Of a look: how often it finds what is not there.</param>
public sealed record CheckFigure(GroundCheckKind Check, double Minutes, string Reason, double? Sd = null, double Finds = 0, double FalseAlarm = 0, double Usual = 0, double UsualSd = 0)
{
    /// <summary>By how much a look changes the odds.</summary>
    internal double Odds(bool clear) => clear ? (1 - Finds) / (1 - FalseAlarm) : Finds / FalseAlarm;
}

public sealed record Effort(double Minutes, string Reason, double Sd = 0);
