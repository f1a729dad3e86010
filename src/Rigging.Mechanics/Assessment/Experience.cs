using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>One correction as it turned out: the roll tendency before and after, and what the model had said it would do.</summary>
/// <param name="ModelledDegPerS">Change of the tendency that the model gives for the moves as left; not 0.</param>
/// <param name="MeasuredDegPerS">Change between the assessments of the flights before and after.</param>
/// <param name="SdDegPerS">Standard deviation of that; more than 0.</param>
public sealed record BeforeAndAfter(AdjustableControl Control, double ModelledDegPerS, double MeasuredDegPerS, double SdDegPerS);

/// <summary>How much of its modelled effect an adjuster really has.</summary>
/// <param name="Factor">1 when it does what the model says.</param>
/// <param name="Sd">Standard deviation of the factor.</param>
/// <param name="Pairs">How many corrections it rests on.</param>
public sealed record MeasuredEffect(double Factor, double Sd, int Pairs);

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

    readonly IReadOnlyList<(BeforeAndAfter Pair, double ExtraShare)> pairs;

    Experience(IReadOnlyList<(BeforeAndAfter, double)> pairs) => this.pairs = pairs;

    public static Experience None { get; } = new([]);

    /// <param name="ofThisAeroplane">With the wings that are on it now.</param>
    /// <param name="ofItsType">Corrections on others.</param>
    public static Experience Of(IEnumerable<BeforeAndAfter> ofThisAeroplane, IEnumerable<BeforeAndAfter> ofItsType) =>
        new([.. ofThisAeroplane.Select(pair => (pair, 0.0)), .. ofItsType.Select(pair => (pair, BetweenAeroplanes))]);

    /// <param name="priorSd">What the model's effect is trusted to before any pair, as a share.</param>
    public MeasuredEffect For(AdjustableControl control, double priorSd)
    {
        var (weight, sum, count) = (1 / (priorSd * priorSd), 1 / (priorSd * priorSd), 0);
        foreach (var (pair, extra) in pairs.Where(p => Kind(p.Pair.Control) == Kind(control) && Math.Abs(p.Pair.ModelledDegPerS) > 1e-9))
        {
            var share = pair.SdDegPerS / pair.ModelledDegPerS;
            var precision = 1 / (share * share + extra * extra);
            weight += precision;
            sum += precision * pair.MeasuredDegPerS / pair.ModelledDegPerS;
            count++;
        }
        return new(sum / weight, 1 / Math.Sqrt(weight), count);
    }

    static AdjustableControl Kind(AdjustableControl control) => control switch
    {
        AdjustableControl.RightEccentric => AdjustableControl.LeftEccentric,
        AdjustableControl.RightStrutFork => AdjustableControl.LeftStrutFork,
        AdjustableControl.RightFlapRod => AdjustableControl.LeftFlapRod,
        _ => control,
    };
}
