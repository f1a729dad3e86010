using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Tests.Wing;

/// <summary>The published ailerons of <c>ailerons-published.csv</c>: right up and left down by one radian each.</summary>
static class PublishedAilerons
{
    const double Inboard = 0.506, Outboard = 0.876, HingeEffectiveness = 0.85;

    /// <summary>In straight pieces fine enough for six digits; the hinge line is straight, so its share of the chord is not.</summary>
    public static IncidenceShape On(Planform wing, double inboardShare, double outboardShare)
    {
        const int pieces = 2000;
        var half = wing.SpanM / 2;
        var (inboardYM, outboardYM) = (Inboard * half, Outboard * half);
        double HingeXM(double yM, double share) => (0.75 - share) * wing.ChordAt(yM);
        var (inboardXM, outboardXM) = (HingeXM(inboardYM, inboardShare), HingeXM(outboardYM, outboardShare));
        double At(double yM)
        {
            var hingeXM = inboardXM + (yM - inboardYM) / (outboardYM - inboardYM) * (outboardXM - inboardXM);
            return HingeEffectiveness * IncidenceShape.FlapEffectiveness(0.75 - hingeXM / wing.ChordAt(yM));
        }
        var right = Enumerable.Range(0, pieces).Select(i =>
        {
            var (from, to) = (i / (double)pieces, (i + 1) / (double)pieces);
            var (fromYM, toYM) = (inboardYM + from * (outboardYM - inboardYM), inboardYM + to * (outboardYM - inboardYM));
            return new IncidenceShape.Piece(fromYM, toYM, At(fromYM), At(toYM));
        }).ToArray();
        return new(right.Concat(right.Select(p => new IncidenceShape.Piece(-p.ToYM, -p.FromYM, -p.AtToRad, -p.AtFromRad))));
    }
}
