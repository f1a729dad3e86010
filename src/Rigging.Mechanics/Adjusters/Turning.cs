using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Adjusters;

/// <summary>The face of a rear-spar attachment a mechanic looks at: the front face looking aft, the rear face looking forward.</summary>
public enum Face { Front, Rear }

/// <summary>As seen by whoever looks at the named face.</summary>
public enum Rotation { Clockwise, CounterClockwise }

/// <summary>An eccentric's head as somebody sees it who looks at one face.</summary>
/// <param name="HoleToTheRight">Where the hole lies at neutral, level with the middle of the bushing.</param>
/// <param name="Lowers">The way round that lowers the trailing edge.</param>
public readonly record struct HeadSeen(bool HoleToTheRight, Rotation Lowers)
{
    /// <summary>The way round to add to, or take from, the eccentric's angle.</summary>
    public Rotation Way(double changeDeg) => changeDeg > 0 == (Lowers == Rotation.Clockwise) ? Rotation.Clockwise : Rotation.CounterClockwise;

    /// <summary>Where the hole stands at an angle of the eccentric, degrees clockwise from the viewer's right hand.</summary>
    public double HoleAtDeg(double angleDeg) => (HoleToTheRight ? 0 : 180) + (Lowers == Rotation.Clockwise ? angleDeg : -angleDeg);
}

/// <summary>
/// Which way the head of an eccentric bushing goes round to lower or raise a trailing edge.
/// </summary>
/// <remarks>
/// <para>
/// The bolt lies fore and aft. The bushing is round outside, about its centre O, and holds the bolt in a hole bored about
/// another centre B. At neutral B is level with O, inboard or outboard of it. Turning the head turns the arrow from O to B.
/// </para>
/// <para>
/// Bushing in the fuselage fitting: O stays with the fuselage and the wing hangs on the bolt, so the wing goes where the
/// arrow goes. Bushing in the wing fitting: the bolt stays with the fuselage and O belongs to the wing, so the wing goes
/// against the arrow. In the first case the arrow must dip to lower the trailing edge, in the second it must rise.
/// </para>
/// <para>
/// The viewer: looking forward at the rear face the left wing is on the left hand, so inboard on the left wing is to the
/// right; looking aft at the front face everything is the other way round. An arrow to the right dips when it turns
/// clockwise; an arrow to the left rises.
/// </para>
/// <para>It holds from any angle within a quarter turn of neutral. Direction is still proved by measurement, never assumed.</para>
/// </remarks>
public static class Turning
{
    // Any turn below a quarter shows the sense.
    const double TrialRad = 0.1;

    /// <summary>The head as whoever looks at a face sees it. Words and drawings both come from here.</summary>
    /// <returns>Null when the fitting or the neutral offset is unknown: then nobody can say.</returns>
    public static HeadSeen? Seen(Side wing, Face face, BushingIn? bushingIn, Spanwise? neutralOffset) =>
        bushingIn is { } fitting && neutralOffset is { } offset
            ? new(SeenRight(wing, face, offset), WingRiseWhenTurnedClockwise(wing, face, fitting, offset) < 0 ? Rotation.Clockwise : Rotation.CounterClockwise)
            : null;

    /// <returns>Null when the fitting or the neutral offset is unknown: then nobody can say.</returns>
    public static Rotation? For(Side wing, Face face, BushingIn? bushingIn, Spanwise? neutralOffset, TrailingEdge wanted) =>
        Seen(wing, face, bushingIn, neutralOffset)?.Way(wanted == TrailingEdge.Down ? 1 : -1);

    /// <summary>As a mechanic reads it: <c>clockwise, looking forward at the rear face</c>.</summary>
    public static string Words(Rotation rotation, Face face) =>
        $"{Wire.Word(rotation)}, looking {(face == Face.Rear ? "forward at the rear face" : "aft at the front face")}";

    /// <summary>Whether what lies inboard, or outboard, of this wing lies to the right hand of whoever looks at the face.</summary>
    public static bool SeenRight(Side wing, Face face, Spanwise offset)
    {
        // Toward the right wing tip is to the right hand looking forward and to the left hand looking aft.
        var rightWingIsToTheRight = face == Face.Rear;
        var outboardIsToTheRight = (wing == Side.Right) == rightWingIsToTheRight;
        return (offset == Spanwise.Outboard) == outboardIsToTheRight;
    }

    /// <summary>Height gained by the wing's rear spar, in throws; the drawing plane is the viewer's, x to the right hand, y up.</summary>
    static double WingRiseWhenTurnedClockwise(Side wing, Face face, BushingIn fitting, Spanwise offset)
    {
        double arrowX = SeenRight(wing, face, offset) ? 1 : -1;

        // Clockwise by t takes (x, 0) to (x·cos t, −x·sin t).
        var arrowRise = -arrowX * Math.Sin(TrialRad);
        return fitting == BushingIn.FuselageFitting ? arrowRise : -arrowRise;
    }
}
