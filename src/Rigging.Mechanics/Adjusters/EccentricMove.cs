using System.Globalization;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>One turn of one wing's eccentric, front and rear bushing together, as a mechanic reads it.</summary>
public sealed class EccentricMove
{
    EccentricMove(Eccentric eccentric, Side wing, Angle from, Angle to) => (Eccentric, Wing, From, To) = (eccentric, wing, from, to);

    internal Eccentric Eccentric { get; }

    public Side Wing { get; }

    /// <summary>From neutral, positive lowers the trailing edge.</summary>
    public Angle From { get; }

    public Angle To { get; }

    /// <summary>Size of the turn, more than 0.</summary>
    public double Flats => Eccentric.FlatsBetween(From, To);

    /// <summary>Of this panel, incidence up positive.</summary>
    public Angle IncidenceChange => Eccentric.IncidenceChange(From, To);

    /// <summary>Where the trailing edge ends up against where it was; null when it ends at the same height, across the end of its throw.</summary>
    public TrailingEdge? TrailingEdge => IncidenceChange.Degrees switch
    {
        > SameHeightDeg => Contract.TrailingEdge.Down,
        < -SameHeightDeg => Contract.TrailingEdge.Up,
        _ => null,
    };

    /// <summary>On its way the trailing edge goes one way and comes back: the turn crosses a quarter turn from neutral.</summary>
    public bool CrossesEndOfThrow => Eccentric.IsPastQuarterTurn(From);

    /// <summary>As seen looking aft at the front face; null when the bushing's data are not on file.</summary>
    public Rotation? AtFrontFace => RotationAt(Face.Front);

    /// <summary>As seen looking forward at the rear face; null when the bushing's data are not on file.</summary>
    public Rotation? AtRearFace => RotationAt(Face.Rear);

    // A hundredth of what a wrench can set; below it nobody can say up or down.
    const double SameHeightDeg = 1e-6;

    /// <summary>
    /// Plans a turn. Refused as <c>at-stops</c> when it would end past the greatest angle or past 90°, and as
    /// <c>nothing-to-turn</c> when it begins where it ends. It may begin anywhere.
    /// </summary>
    public static Answer<EccentricMove> Plan(Eccentric eccentric, Side wing, Angle from, Angle to)
    {
        ArgumentNullException.ThrowIfNull(eccentric);
        if (!(to.Abs() <= eccentric.MaxAngle) || Eccentric.IsPastQuarterTurn(to))
        {
            return new Refusal("at-stops", string.Create(CultureInfo.InvariantCulture,
                $"The {Wire.Word(wing)} eccentric would end at {to.Degrees:0.#}°; it may end at most {Math.Min(eccentric.MaxAngle.Degrees, 90):0.#}° from neutral."));
        }
        if (!((to - from).Abs() > Angle.FromDegrees(SameHeightDeg)))
            return new Refusal("nothing-to-turn", string.Create(CultureInfo.InvariantCulture, $"The {Wire.Word(wing)} eccentric already stands at {to.Degrees:0.#}°."));
        return new EccentricMove(eccentric, wing, from, to);
    }

    /// <summary>
    /// <c>Left wing, trailing edge down: ½ flat, from −15° to 15° … counter-clockwise, looking aft at the front face;
    /// clockwise, looking forward at the rear face.</c> Without the bushing's data only up or down is said.
    /// </summary>
    public override string ToString()
    {
        var wing = Wing == Side.Left ? "Left" : "Right";
        var edge = TrailingEdge is { } way ? $"trailing edge {Wire.Word(way)}" : "trailing edge back to the same height";
        var turn = AtFrontFace is { } front && AtRearFace is { } rear
            ? $"{Turning.Words(front, Face.Front)}; {Turning.Words(rear, Face.Rear)}"
            : "turning direction not on file: find it by measurement";
        return string.Create(CultureInfo.InvariantCulture,
            $"{wing} wing, {edge}: {FlatsInWords.Of(Flats)}, from {Degrees(From)} to {Degrees(To)}, incidence {Signed(IncidenceChange)}; front and rear bushing together; {turn}.");
    }

    /// <summary>The same in the form of the answer; one face suffices there, the rear.</summary>
    public Move ToContract() => new(
        Wing == Side.Left ? AdjustableControl.LeftEccentric : AdjustableControl.RightEccentric,
        From.Degrees,
        To.Degrees,
        Flats,
        TrailingEdge,
        AtRearFace is { } rear ? Turning.Words(rear, Face.Rear) : null,
        IncidenceChange.Degrees);

    // The head's sense follows the angle, also where the height comes back.
    Rotation? RotationAt(Face face) => Eccentric.RotationOf(Wing, face, To > From ? Contract.TrailingEdge.Down : Contract.TrailingEdge.Up);

    static string Degrees(Angle angle) => string.Create(CultureInfo.InvariantCulture, $"{angle.Degrees:0.#;−0.#;0}°");

    static string Signed(Angle angle) => string.Create(CultureInfo.InvariantCulture, $"{angle.Degrees:+0.000;−0.000;0.000}°");
}
