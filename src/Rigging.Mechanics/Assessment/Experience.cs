using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>How much of its modelled effect an adjuster really has.</summary>
/// <param name="Factor">1 when it does what the model says.</param>
/// <param name="Sd">Standard deviation of the factor.</param>
/// <param name="Pairs">How many corrections it rests on.</param>
public sealed record MeasuredEffect(double Factor, double Sd, int Pairs)
{
    /// <summary>What did next to nothing is not turned without end to make up for it (judgement, no source).</summary>
    const double Least = 0.5;

    /// <summary>The factor by which a move is sized: half at the least.</summary>
    public double SizingFactor => Math.Max(Factor, Least);
}

/// <summary>
/// What earlier corrections on the same aeroplane, and on others of its type, taught: for each adjuster a factor on its modelled
/// effect, normal with mean 1 and the model's error before any pair, narrowed by each.
/// </summary>
/// <remarks>
/// Both wings' adjusters of a kind are one: they are built alike. A pair of another aeroplane of the type counts with its own scatter
/// between aeroplanes added (judgement, no source).
/// </remarks>
public sealed class Experience
{
    /// <summary>How far two aeroplanes of one type differ in what a flat does, as a share.</summary>
    const double BetweenAeroplanes = 0.15;

    readonly IReadOnlyList<EarlierCorrection> corrections;

    Experience(IReadOnlyList<EarlierCorrection> corrections) => this.corrections = corrections;

    /// <summary>What the model says a change does to the roll tendency at the reference, °/s: what a correction's measured effect is held against.</summary>
    public static double Modelled(KnownChange change, Aeroplane aeroplane)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(aeroplane);
        return change.Amplitude * ModelledCause.TendencyGains(FlightCase.AtReference(aeroplane))[ModelledCause.Of(change.Cause).First];
    }

    public static Experience Of(IReadOnlyList<EarlierCorrection>? corrections) => new(corrections ?? []);

    /// <summary>Of each kind of adjuster that was moved before, as a sentence.</summary>
    /// <param name="priorSd">As in <see cref="For"/>.</param>
    /// <param name="modelledPerUnit">What the model says one unit of it does to the roll tendency, °/s either way, and the unit's name; null where that is not known.</param>
    internal IEnumerable<string> Sentences(double priorSd, Func<AdjustableControl, (double DegPerS, string Unit)?> modelledPerUnit) => corrections.Select(earlier => Kind(earlier.Control)).Distinct().Select(control =>
    {
        var effect = For(control, priorSd);
        var perUnit = modelledPerUnit(control) is var (degPerS, unit)
            ? string.Create(CultureInfo.InvariantCulture, $", {Math.Abs(degPerS) * effect.Factor:0.00} ± {Math.Abs(degPerS) * effect.Sd:0.00} °/s for a {unit}")
            : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{Named(control)} does {effect.Factor:0.00} ± {effect.Sd:0.00} of what the model says{perUnit}, from {effect.Pairs} earlier correction{(effect.Pairs == 1 ? "" : "s")} on this aeroplane or its type; predictions use it.");
    });

    /// <param name="priorSd">What the model's effect is trusted to before any pair, as a share.</param>
    public MeasuredEffect For(AdjustableControl control, double priorSd)
    {
        var (weight, sum, count) = (1 / (priorSd * priorSd), 1 / (priorSd * priorSd), 0);
        foreach (var earlier in corrections.Where(earlier => Kind(earlier.Control) == Kind(control)))
        {
            var share = earlier.SdDegPerS / earlier.ModelledDegPerS;
            var extra = earlier.SameAeroplane ? 0 : BetweenAeroplanes;
            var precision = 1 / (share * share + extra * extra);
            weight += precision;
            sum += precision * earlier.MeasuredDegPerS / earlier.ModelledDegPerS;
            count++;
        }
        return new(sum / weight, 1 / Math.Sqrt(weight), count);
    }

    /// <summary>What moves do to the roll tendency, with its standard deviation, °/s: adjusters of one kind err together, those of different kinds each by itself.</summary>
    /// <param name="gains">Roll tendency for one unit of each amplitude, where it is asked for.</param>
    internal (double DegPerS, double Sd) Effect(IEnumerable<(AdjustableControl Control, KnownChange Change)> moves, IReadOnlyList<double> gains, double priorSd)
    {
        var (change, variance) = (0.0, 0.0);
        foreach (var kind in moves.GroupBy(move => Kind(move.Control)))
        {
            var modelled = kind.Sum(move => move.Change.Amplitude * gains[ModelledCause.Of(move.Change.Cause).First]);
            var effect = For(kind.Key, priorSd);
            change += modelled * effect.Factor;
            variance += Math.Pow(modelled * effect.Sd, 2);
        }
        return (change, Math.Sqrt(variance));
    }

    static AdjustableControl Kind(AdjustableControl control) => control switch
    {
        AdjustableControl.RightEccentric => AdjustableControl.LeftEccentric,
        AdjustableControl.RightStrutFork => AdjustableControl.LeftStrutFork,
        AdjustableControl.RightFlapRod => AdjustableControl.LeftFlapRod,
        _ => control,
    };

    static string Named(AdjustableControl control) => control switch
    {
        AdjustableControl.LeftEccentric => "An eccentric",
        AdjustableControl.LeftStrutFork => "A rear strut fork",
        AdjustableControl.LeftFlapRod => "A flap rod",
        AdjustableControl.AileronNeutral => "The aileron neutral",
        AdjustableControl.AileronTab => "The aileron tab",
        AdjustableControl.RudderTab => "The rudder tab",
        _ => throw new ArgumentOutOfRangeException(nameof(control)),
    };
}
