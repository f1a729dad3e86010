using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Motion;

/// <summary>
/// One aeroplane at one speed, air and power: which asymmetry a difference amounts to here, and what the aeroplane then does.
/// </summary>
/// <remarks>
/// Flap lowered carries more of the lift inboard, and with it the induced drag of a difference; the derivatives stay those of the file.
/// Moving the centre of mass sideways is its weight moment alone.
/// </remarks>
public sealed class FlightPoint
{
    const double DegPerRad = 180 / Math.PI;

    readonly Aeroplane aeroplane;
    readonly SpanLoading carried;
    readonly double power;

    internal FlightPoint(Aeroplane aeroplane, LateralModel model, double power, double flapDeg)
        : this(aeroplane, model, power, aeroplane.Carried(model.WeightN / model.ForceN, flapDeg))
    {
    }

    FlightPoint(Aeroplane aeroplane, LateralModel model, double power, SpanLoading carried)
    {
        (this.aeroplane, Model, this.power, this.carried) = (aeroplane, model, power, carried);
        Held = new(model, aeroplane.Airframe.BallDegPerWidth);
        Release = new(model);
    }

    public LateralModel Model { get; }

    public HeldFlight Held { get; }

    public Release Release { get; }

    /// <summary>The same flight of an aeroplane of which one figure is so many times itself; the reference is not touched by it.</summary>
    internal FlightPoint With(EstimableFigure figure, double times) => new(aeroplane, Model.With(figure, times), power, carried);

    internal Airframe Airframe => aeroplane.Airframe;

    internal double FuelMomentPerLitreNm => aeroplane.FuelMomentPerLitreNm;

    /// <summary>Dynamic pressure here over that at the airframe's reference.</summary>
    internal double PressureRatio => Model.DynamicPressurePa / aeroplane.Reference.Model.DynamicPressurePa;

    /// <summary>One radian of panel incidence difference, right minus left.</summary>
    public Asymmetry PanelIncidence => Of(aeroplane.Panel);

    /// <summary>One radian of tip incidence difference, right minus left, growing from the panel's inboard end.</summary>
    public Asymmetry TipIncidence => Of(aeroplane.Tip);

    /// <summary>One radian of flap difference, right minus left, trailing edge down positive.</summary>
    public Asymmetry FlapDifference => Of(aeroplane.Flap);

    /// <summary>
    /// One unit of rolling moment coefficient, right wing down, from lift that one wing lacks: it drags as a panel of less incidence does.
    /// </summary>
    public Asymmetry LiftDifference
    {
        get
        {
            var panel = PanelIncidence;
            return new(Rolling: 1, Yawing: panel.Yawing / panel.Rolling);
        }
    }

    /// <summary>What fuel and people do.</summary>
    public Asymmetry Of(Load load) => new(WeightNm: LateralLoad.RollingMomentNm(Airframe, load));

    /// <summary>
    /// What the slipstream does here and not at the reference: the moments follow power, not airspeed, and the type's own
    /// offsets cancel them at reference power and airspeed.
    /// </summary>
    public Asymmetry Slipstream
    {
        get
        {
            var beyond = power / PressureRatio - Airframe.Reference.PowerPercent / 100;
            return new(
                Rolling: beyond * Airframe.Derivatives.SlipstreamClAtFullPower,
                Yawing: beyond * Airframe.Derivatives.SlipstreamCnAtFullPower);
        }
    }

    /// <summary>
    /// Roll rate hands off with the shown ball centred, °/s, right wing down positive: the rolling moment that is left when
    /// the wheel is let go out of straight flight, over the damping in roll.
    /// </summary>
    public double RollTendencyDegPerS(Asymmetry asymmetry)
    {
        var d = Model.Derivatives;
        var rolling = d.ClAileron * (asymmetry.AileronFloatRad - Held.Straight(asymmetry).AileronRad);
        return Model.RateUnitRadPerS * rolling / Math.Abs(d.ClP) * DegPerRad;
    }

    Asymmetry Of(SpanLoading change) =>
        new(Rolling: change.RollingMomentCoefficient, Yawing: carried.YawingMomentOf(change));
}
