using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;

namespace Rigging.Web.Drawings;

/// <summary>
/// What is drawn of an eccentric. Angles in degrees from neutral, positive lowers the trailing edge up to a quarter turn; the stop is the
/// greatest angle either way. Fitting and neutral offset are null when not on file: then no turning direction may be shown.
/// </summary>
public sealed record EccentricTurn(Side Wing, double AsFoundDeg, double AsLeftDeg, double StopDeg, int HeadFlats, BushingIn? BushingIn, Spanwise? NeutralOffset)
{
    public double ChangeDeg => AsLeftDeg - AsFoundDeg;

    public double FlatDeg => 360.0 / HeadFlats;

    public bool Stays => Math.Abs(ChangeDeg) < 1e-6;

    public string HowFar => FlatsInWords.Of(Math.Abs(ChangeDeg) / FlatDeg);

    /// <summary>The rear spar below its neutral height, in throws.</summary>
    public static double Drop(double angleDeg) => Math.Sin(double.DegreesToRadians(angleDeg));

    /// <summary>Where the trailing edge ends against where it was. Past a quarter turn it comes back, so the angle's sign does not tell.</summary>
    public TrailingEdge? Edge => (Drop(AsLeftDeg) - Drop(AsFoundDeg)) switch
    {
        > 1e-6 => TrailingEdge.Down,
        < -1e-6 => TrailingEdge.Up,
        _ => null,
    };

    public string Effect => Edge switch
    {
        TrailingEdge.Down => Say.TrailingEdgeDown,
        TrailingEdge.Up => Say.TrailingEdgeUp,
        _ => Say.TrailingEdgeBackToSame,
    };

    /// <summary>The head as it is seen at a face; null when nobody can say which way it turns.</summary>
    public HeadSeen? Seen(Face face) => Turning.Seen(Wing, face, BushingIn, NeutralOffset);
}
