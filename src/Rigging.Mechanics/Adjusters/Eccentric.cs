using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>
/// The eccentric bushing at a rear-spar attachment: turning its head lowers or raises the rear spar, and with it the
/// trailing edge of a panel that turns as one rigid piece about its front spar.
/// </summary>
/// <remarks>
/// Angles count from neutral, where the two axes of the bushing lie level with each other; positive lowers the trailing
/// edge and so raises the panel's incidence. The same sign holds for both wings and for the front and the rear bushing of
/// one wing. With throw e, spar spacing s and angle θ: drop = e·sin θ, incidence change = atan(drop / s), move along the
/// span = e·(1 − cos θ). Plane geometry; no published figure is needed, and none for throw or stops exists: they are the
/// aeroplane's own data.
/// </remarks>
public sealed class Eccentric
{
    static readonly Angle QuarterTurn = Angle.FromDegrees(90);
    readonly double throwM;
    readonly double sparSpacingM;
    readonly EccentricOnFile onFile;

    Eccentric(EccentricOnFile onFile, double sparSpacingM) =>
        (this.onFile, throwM, this.sparSpacingM) = (onFile, onFile.ThrowMm / 1000, sparSpacingM);

    /// <summary>Distance between the bushing's two axes.</summary>
    public Length Throw => Length.FromMeters(throwM);

    /// <summary>Distance from the front to the rear spar attachment along the root chord.</summary>
    public Length SparSpacing => Length.FromMeters(sparSpacingM);

    /// <summary>60° for a hexagon.</summary>
    public Angle PerFlat => Angle.FromDegrees(360.0 / onFile.HeadFlats);

    /// <summary>Largest angle either way that a planned move may end at.</summary>
    public Angle MaxAngle => Angle.FromDegrees(onFile.MaxAngleDeg);

    /// <summary>
    /// The eccentric of an airframe. Refused as <c>eccentric-not-on-file</c> when its data have not been entered, and as
    /// <c>panel-twists</c> when a strut or wire holds the rear spar: such a panel twists instead of turning as one piece.
    /// </summary>
    public static Answer<Eccentric> On(Airframe airframe)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        if (airframe.Wing.Bracing is not (Bracing.SingleStrutAtFrontSpar or Bracing.Cantilever))
            return new Refusal("panel-twists", $"With {Wire.Word(airframe.Wing.Bracing)} bracing the panel twists when its rear spar is moved; the rigid-panel rule wants single-strut-at-front-spar or cantilever.");
        if (airframe.Eccentric is not { } onFile)
            return new Refusal("eccentric-not-on-file", "Throw, head and stops of the eccentric are not on file for this airframe: enter them from its own data, with their source.");
        return new Eccentric(onFile, airframe.Wing.SparSpacingM);
    }

    /// <summary>How far the rear spar lies below its neutral height. Any angle: past 90° it comes back.</summary>
    public Length DropAt(Angle angle) => Length.FromMeters(throwM * Math.Sin(angle.Radians));

    /// <summary>The panel's incidence above that at neutral.</summary>
    public Angle IncidenceAt(Angle angle) => Angle.FromRadians(Math.Atan(throwM * Math.Sin(angle.Radians) / sparSpacingM));

    /// <summary>What a turn changes: incidence up positive.</summary>
    public Angle IncidenceChange(Angle from, Angle to) => IncidenceAt(to) - IncidenceAt(from);

    /// <summary>Degrees of incidence per degree of turn. Nothing left at 90°, reversed beyond.</summary>
    public double SensitivityAt(Angle angle)
    {
        var slope = throwM * Math.Sin(angle.Radians) / sparSpacingM;
        return throwM * Math.Cos(angle.Radians) / sparSpacingM / (1 + slope * slope);
    }

    /// <summary>The angle within 90° either way that gives this drop; null when it is more than the throw.</summary>
    public Angle? AngleForDrop(Length drop)
    {
        double sine = drop.Meters / throwM;
        return Math.Abs(sine) <= 1 ? Angle.FromRadians(Math.Asin(sine)) : null;
    }

    /// <summary>The angle within 90° either way that puts the panel this much above its neutral incidence; null when the throw does not reach.</summary>
    public Angle? AngleForIncidence(Angle incidence) =>
        incidence.Abs() < QuarterTurn ? AngleForDrop(Length.FromMeters(sparSpacingM * Math.Tan(incidence.Radians))) : null;

    /// <summary>How far the attachment moves along the span from where it is at neutral: e·(1 − cos θ), 0 or more; it sweeps the wing and changes cable length a little.</summary>
    public Length SpanwiseMoveAt(Angle angle) => Length.FromMeters(throwM * (1 - Math.Cos(angle.Radians)));

    /// <summary>Which way that move goes on one wing; null when the bushing's data are not on file.</summary>
    /// <remarks>
    /// At neutral the hole lies as far inboard (or outboard) as it can, so a turn takes it back the other way. A wing that
    /// hangs on the hole goes with it; a wing that carries the bushing goes against it.
    /// </remarks>
    public Spanwise? SpanwiseDirection(Side wing) => NeutralOffset(wing) is { } offset && onFile.BushingIn is { } fitting
        ? (offset == Spanwise.Inboard) == (fitting == BushingIn.FuselageFitting) ? Spanwise.Outboard : Spanwise.Inboard
        : null;

    /// <summary>Size of a turn in flats of the head, 0 or more.</summary>
    public double FlatsBetween(Angle from, Angle to) => (to - from).Abs() / PerFlat;

    /// <summary>Past a quarter turn more turning raises what it lowered: legitimate as found, never a planned end.</summary>
    public static bool IsPastQuarterTurn(Angle angle) => angle.Abs() > QuarterTurn;

    /// <summary>Which way the head goes round for a turn toward <paramref name="toward"/>; null when the bushing's data are not on file.</summary>
    internal Rotation? RotationOf(Side wing, Face face, TrailingEdge toward) => Turning.For(wing, face, onFile.BushingIn, NeutralOffset(wing), toward);

    /// <summary>Whether the bolt hole lies to the viewer's right of the bushing's centre at neutral; null when not on file.</summary>
    internal bool? HoleSeenRight(Side wing, Face face) => NeutralOffset(wing) is { } offset ? Turning.SeenRight(wing, face, offset) : null;

    Spanwise? NeutralOffset(Side wing) => wing == Side.Left ? onFile.NeutralOffset?.Left : onFile.NeutralOffset?.Right;
}
