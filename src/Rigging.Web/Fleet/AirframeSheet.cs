using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Estimates;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Fleet;

/// <summary>An airframe file as people read it: what is missing, unlikely or estimated, and what is computed from it.</summary>
/// <param name="Missing">What nobody has entered yet, and what that refuses.</param>
/// <param name="Refused">Why no flight of it can be computed, each naming the fields; empty for an aeroplane that flies. Then nothing is worth anything.</param>
/// <param name="Warnings">What is unlikely for a light aeroplane.</param>
/// <param name="Wing">The wing's figures, by the lattice and by lifting line.</param>
/// <param name="Motions">How it moves when left to itself, at the reference.</param>
/// <param name="Loads">How it flies at the school's loads, when it flies straight with the one it is rigged for.</param>
public sealed record AirframeSheet(
    Airframe Airframe, int Version,
    IReadOnlyList<string> Missing, IReadOnlyList<string> Refused, IReadOnlyList<Warning> Warnings, IReadOnlyList<EstimateLine> Estimated,
    string Panels, IReadOnlyList<WingLine> Wing, IReadOnlyList<MotionLine> Motions,
    IReadOnlyList<string> Currency, IReadOnlyList<LoadLine> Loads)
{
    public static AirframeSheet Of(Airframe airframe, int version)
    {
        var aeroplane = new Aeroplane(airframe);
        var coins = new Equivalents(aeroplane);
        return new(airframe, version,
            [.. MissingFrom(airframe)], [.. aeroplane.Refusals.Select(refusal => refusal.Sentence)], Plausibility.Of(airframe),
            [.. (airframe.Estimated ?? []).Select(figure => new EstimateLine(Name(figure.Figure), figure.Value, figure.Method, figure.Source, figure.AccuracyPercent))],
            aeroplane.Panels,
            [.. aeroplane.Figures.Select(figure => new WingLine(Name(figure.Quantity), figure.Checked.Value, figure.Checked.GridErrorPercent, figure.Checked.LiftingLine))],
            [.. MotionsOf(aeroplane.Reference.Model.Modes())],
            coins.Unit(), coins.AtCommonLoads(0));
    }

    static IEnumerable<string> MissingFrom(Airframe airframe)
    {
        if (airframe.ApprovedData is null) yield return Say.ApprovedDataThatGovernsEvery;
        if (airframe.Eccentric is null) yield return Say.EccentricNoMoveOfWing;
        if (airframe.SpeedsKt is null) yield return Say.SpeedsNoTestPoint;
        if (airframe.Limits is null) yield return Say.LimitsNoVerdictCan;
        if (airframe.FuelSelector is null) yield return Say.FuelSelectorNoTest;
        if (airframe.Ailerons.FixedTab is null) yield return Say.FixedTabOnAileronNone;
        if (airframe.Rudder is null) yield return Say.FixedTabOnRudderNone;
        if (airframe.Estimated is not { Count: > 0 }) yield break;
        if (airframe.Wing.Position is null) yield return Say.WingPositionMissing;
        if (airframe.Fuselage is not { LengthM: not null, DepthM: not null, WidthM: not null }) yield return Say.FuselageMissing;
        if (airframe.Propeller is null) yield return Say.PropellerMissing;
    }

    static IEnumerable<MotionLine> MotionsOf(LateralModes modes)
    {
        yield return modes.Roll.Imaginary == 0
            ? new(Say.Roll, Gaps.Fill(Say.RollRateSettlesInS, Words.Number(-1 / modes.Roll.Real)))
            : new(Say.RollAndSpiral, Say.MergedIntoOneSlow);
        if (modes.Roll.Imaginary == 0) yield return new(Say.Spiral, Gaps.Fill(Say.BankLeftAlone, Doubling(modes.Spiral.Real)));
        yield return new(Say.DutchRoll, modes.DutchRoll.Imaginary == 0
            ? Gaps.Fill(Say.NoSwingYaw, Doubling(modes.DutchRoll.Real))
            : Gaps.Fill(Say.NoseSwingsOnceInS, Words.Number(2 * Math.PI / modes.DutchRoll.Imaginary, 1), Doubling(modes.DutchRoll.Real)));
    }

    static string Doubling(double real) => Math.Abs(real) < 1e-4
        ? Say.StaysAsItIs
        : Gaps.Fill(real > 0 ? Say.DoublesInS : Say.HalvesInS, Words.Number(Math.Log(2) / Math.Abs(real), 1));

    static string Name(WingQuantity quantity) => quantity switch
    {
        WingQuantity.LiftSlope => Say.LiftCoefficientPerRadian,
        WingQuantity.RollDamping => Say.DampingInRollPerUnit,
        WingQuantity.PanelDifference => Say.RollingMomentPerRadianOfPanel,
        WingQuantity.TipDifference => Say.RollingMomentPerRadianOf,
        WingQuantity.FlapBand => Say.RollingMomentPerRadian,
        WingQuantity.AileronBand => Say.RollingMomentPerRadianOver,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity)),
    };

    static string Name(EstimableFigure figure) => figure switch
    {
        EstimableFigure.CYBeta => Say.SideForceBySideslipCY,
        EstimableFigure.ClBeta => Say.RollBySideslipCl,
        EstimableFigure.ClR => Say.RollByYawRateClr,
        EstimableFigure.CnBeta => Say.YawBySideslipCn,
        EstimableFigure.CnP => Say.YawByRollRateCnp,
        EstimableFigure.CnR => Say.DampingInYawCnr,
        EstimableFigure.CYRudder => Say.SideForceByRudderCY,
        EstimableFigure.ClRudder => Say.RollByRudderClR,
        EstimableFigure.CnRudder => Say.YawByRudderCnR,
        EstimableFigure.CnAileron => Say.YawByAileronCn,
        EstimableFigure.RollInertia => Say.InertiaInRollKgm,
        EstimableFigure.YawInertia => Say.InertiaInYawKgm,
        EstimableFigure.SlipstreamClAtFullPower => Say.RollBySlipstream,
        EstimableFigure.SlipstreamCnAtFullPower => Say.YawBySlipstream,
        _ => throw new ArgumentOutOfRangeException(nameof(figure)),
    };
}

public sealed record EstimateLine(string Figure, double Value, string Method, string Source, double AccuracyPercent);

public sealed record WingLine(string Figure, double Lattice, double GridErrorPercent, double LiftingLine);

public sealed record MotionLine(string Name, string Sentence);
