namespace Rigging.Mechanics.Wing;

/// <summary>
/// A change of incidence along the span, radians, leading edge up positive: straight pieces, zero elsewhere.
/// The distance y is positive to the right.
/// </summary>
public sealed class IncidenceShape
{
    readonly Piece[] pieces;

    /// <summary>From pieces that do not overlap, in any order.</summary>
    public IncidenceShape(IEnumerable<Piece> pieces) => this.pieces = [.. pieces];

    /// <summary>One straight piece of the shape.</summary>
    public readonly record struct Piece(double FromYM, double ToYM, double AtFromRad, double AtToRad)
    {
        internal double At(double yM) => AtFromRad + (yM - FromYM) / (ToYM - FromYM) * (AtToRad - AtFromRad);
    }

    /// <summary>The same incidence all along: one radian.</summary>
    public static IncidenceShape Uniform(double spanM) => new([new(-spanM / 2, spanM / 2, 1, 1)]);

    /// <summary>
    /// What a roll rate does: the wing going down meets the air from below. One unit of pb/2V, right wing down
    /// positive, raises the incidence of the right tip by one radian.
    /// </summary>
    public static IncidenceShape RollRate(double spanM) => new([new(-spanM / 2, spanM / 2, -1, 1)]);

    /// <summary>
    /// A difference of one radian, right minus left, over a band of the span: half a radian up on the right, half
    /// down on the left. Whole panels, flaps and ailerons.
    /// </summary>
    public static IncidenceShape BandDifference(double inboardYM, double outboardYM) =>
        new([new(-outboardYM, -inboardYM, -0.5, -0.5), new(inboardYM, outboardYM, 0.5, 0.5)]);

    /// <summary>One radian on both sides over a band of the span: both flaps lowered.</summary>
    public static IncidenceShape Band(double inboardYM, double outboardYM) =>
        new([new(-outboardYM, -inboardYM, 1, 1), new(inboardYM, outboardYM, 1, 1)]);

    /// <summary>One radian on one side only: the lift of a fixed tab, or of one flap that stands alone.</summary>
    public static IncidenceShape OneSided(double inboardYM, double outboardYM, bool onRight) => new(
        [onRight ? new(inboardYM, outboardYM, 1, 1) : new(-outboardYM, -inboardYM, 1, 1)]);

    /// <summary>A difference of one radian at the tips, right minus left, growing linearly from nothing at <paramref name="inboardYM"/>.</summary>
    public static IncidenceShape TwistDifference(double inboardYM, double tipYM) =>
        new([new(-tipYM, -inboardYM, -0.5, 0), new(inboardYM, tipYM, 0, 0.5)]);

    /// <summary>The value at one place; where two pieces meet, the mean of both sides.</summary>
    public double At(double yM)
    {
        var sum = 0.0;
        foreach (var piece in pieces)
            if (yM > piece.FromYM && yM < piece.ToYM)
                return piece.At(yM);
            else if (yM == piece.FromYM || yM == piece.ToYM)
                sum += piece.At(yM) / 2;
        return sum;
    }

    /// <summary>The mean over a stretch of the span, exact also where the shape begins or ends inside it.</summary>
    public double MeanBetween(double fromYM, double toYM)
    {
        var sum = 0.0;
        foreach (var piece in pieces)
        {
            var (from, to) = (Math.Max(fromYM, piece.FromYM), Math.Min(toYM, piece.ToYM));
            if (to > from)
                sum += (to - from) * piece.At((from + to) / 2);
        }
        return sum / (toYM - fromYM);
    }

    /// <summary>
    /// How many radians of incidence one radian of plain flap is worth on a thin section: 1 − (θ − sin θ)/π,
    /// θ = acos(2E − 1), with E the flap's share of the chord. Source: thin-aerofoil theory.
    /// </summary>
    public static double FlapEffectiveness(double chordFraction)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(chordFraction);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(chordFraction, 1);
        var theta = Math.Acos(2 * chordFraction - 1);
        return 1 - (theta - Math.Sin(theta)) / Math.PI;
    }
}
