using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Estimates;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Fleet;

/// <summary>An airframe file as people read it: what is missing, unlikely or estimated, and what is computed from it.</summary>
/// <param name="Missing">What nobody has entered yet, and what that refuses.</param>
/// <param name="Warnings">What is unlikely for a light aeroplane.</param>
/// <param name="Wing">The wing's figures, by the lattice and by lifting line.</param>
/// <param name="Motions">How it moves when left to itself, at the reference.</param>
/// <param name="Loads">How it flies at the school's loads, when it flies straight with the one it is rigged for.</param>
public sealed record AirframeSheet(
    Airframe Airframe, int Version,
    IReadOnlyList<string> Missing, IReadOnlyList<Warning> Warnings, IReadOnlyList<EstimateLine> Estimated,
    string Panels, IReadOnlyList<WingLine> Wing, IReadOnlyList<MotionLine> Motions,
    IReadOnlyList<string> Currency, IReadOnlyList<LoadLine> Loads)
{
    public static AirframeSheet Of(Airframe airframe, int version)
    {
        var aeroplane = new Aeroplane(airframe);
        var coins = new Equivalents(aeroplane);
        return new(airframe, version,
            [.. MissingFrom(airframe)], Plausibility.Of(airframe),
            [.. (airframe.Estimated ?? []).Select(figure => new EstimateLine(Name(figure.Figure), figure.Value, figure.Method, figure.Source, figure.AccuracyPercent))],
            aeroplane.Panels,
            [.. aeroplane.Figures.Select(figure => new WingLine(Name(figure.Quantity), figure.Checked.Value, figure.Checked.GridErrorPercent, figure.Checked.LiftingLine))],
            [.. MotionsOf(aeroplane.Reference.Model.Modes())],
            coins.Unit(), coins.AtCommonLoads(0));
    }

    static IEnumerable<string> MissingFrom(Airframe airframe)
    {
        if (airframe.ApprovedData is null) yield return "The approved data that governs: every correction must then name its own.";
        if (airframe.Eccentric is null) yield return "The eccentric: no move of a wing is proposed.";
        if (airframe.SpeedsKt is null) yield return "Speeds: no test point is proposed.";
        if (airframe.Limits is null) yield return "Limits: no verdict can be given and nothing is moved.";
        if (airframe.FuelSelector is null) yield return "The fuel selector: no test by burning one side is proposed.";
        if (airframe.Ailerons.FixedTab is null) yield return "A fixed tab on an aileron: none is bent.";
        if (airframe.Rudder is null) yield return "A fixed tab on the rudder: none is bent.";
    }

    static IEnumerable<MotionLine> MotionsOf(LateralModes modes)
    {
        yield return modes.Roll.Imaginary == 0
            ? new("Roll", $"a roll rate settles in {Words.Number(-1 / modes.Roll.Real)}{Space}s (to 63{Space}%)")
            : new("Roll and spiral", "merged into one slow swing, which light aeroplanes do not have");
        if (modes.Roll.Imaginary == 0) yield return new("Spiral", $"a bank left alone {Doubling(modes.Spiral.Real)}");
        yield return new("Dutch roll", modes.DutchRoll.Imaginary == 0
            ? $"no swing; a yaw {Doubling(modes.DutchRoll.Real)}"
            : $"the nose swings once in {Words.Number(2 * Math.PI / modes.DutchRoll.Imaginary, 1)}{Space}s and {Doubling(modes.DutchRoll.Real)}");
    }

    static string Doubling(double real) => Math.Abs(real) < 1e-4
        ? "stays as it is"
        : $"{(real > 0 ? "doubles" : "halves")} in {Words.Number(Math.Log(2) / Math.Abs(real), 1)}{Space}s";

    static string Name(WingQuantity quantity) => quantity switch
    {
        WingQuantity.LiftSlope => "Lift coefficient, per radian of incidence",
        WingQuantity.RollDamping => "Damping in roll, per unit of pb/2V",
        WingQuantity.PanelDifference => "Rolling moment, per radian of panel incidence difference",
        WingQuantity.TipDifference => "Rolling moment, per radian of tip incidence difference",
        WingQuantity.FlapBand => "Rolling moment, per radian over the span of the flaps",
        WingQuantity.AileronBand => "Rolling moment, per radian over the span of the ailerons",
        _ => throw new ArgumentOutOfRangeException(nameof(quantity)),
    };

    static string Name(EstimableFigure figure) => figure switch
    {
        EstimableFigure.CYBeta => "Side force by sideslip (CYβ)",
        EstimableFigure.ClBeta => "Roll by sideslip (Clβ)",
        EstimableFigure.ClR => "Roll by yaw rate (Clr)",
        EstimableFigure.CnBeta => "Yaw by sideslip (Cnβ)",
        EstimableFigure.CnP => "Yaw by roll rate (Cnp)",
        EstimableFigure.CnR => "Damping in yaw (Cnr)",
        EstimableFigure.CYRudder => "Side force by rudder (CYδr)",
        EstimableFigure.ClRudder => "Roll by rudder (Clδr)",
        EstimableFigure.CnRudder => "Yaw by rudder (Cnδr)",
        EstimableFigure.CnAileron => "Yaw by aileron (Cnδa)",
        EstimableFigure.RollInertia => "Inertia in roll, kg·m²",
        EstimableFigure.YawInertia => "Inertia in yaw, kg·m²",
        _ => throw new ArgumentOutOfRangeException(nameof(figure)),
    };
}

public sealed record EstimateLine(string Figure, double Value, string Method, string Source, double AccuracyPercent);

public sealed record WingLine(string Figure, double Lattice, double GridErrorPercent, double LiftingLine);

public sealed record MotionLine(string Name, string Sentence);
