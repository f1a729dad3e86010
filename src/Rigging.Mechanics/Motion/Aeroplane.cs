using Rigging.Mechanics.Air;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Motion;

/// <summary>One airframe as the equations want it: its wing solved once, its derivatives, its reference point.</summary>
public sealed class Aeroplane
{
    const double RadPerDeg = Math.PI / 180;
    const double KnotMPerS = 1852.0 / 3600;
    const double FootM = 0.3048;
    const double CelsiusZeroK = 273.15;

    readonly VortexLattice lattice;
    readonly AirframeMass mass;
    readonly Lazy<SpanLoading> flapsLowered;
    readonly Lazy<IReadOnlyList<WingFigure>> figures;

    public Aeroplane(Airframe airframe)
    {
        Airframe = airframe;
        lattice = new(PlanformOf(airframe.Wing));
        var wing = lattice.Wing;
        var tipYM = wing.SpanM / 2;
        var panel = IncidenceShape.BandDifference(airframe.Wing.PanelInboardYM, tipYM);
        var tip = IncidenceShape.TwistDifference(airframe.Wing.PanelInboardYM, tipYM);
        var ailerons = IncidenceShape.BandDifference(airframe.Ailerons.InboardYM, Math.Min(airframe.Ailerons.OutboardYM, tipYM));
        var flaps = IncidenceShape.BandDifference(airframe.Flaps.InboardYM, airframe.Flaps.OutboardYM);
        var rolling = IncidenceShape.RollRate(wing.SpanM);

        (Panel, Tip) = (lattice.Response(panel), lattice.Response(tip));
        Flap = Effective(airframe.Flaps.ChordFraction, airframe.Flaps.InboardYM, airframe.Flaps.OutboardYM);
        flapsLowered = new(() => lattice.Response(IncidenceShape.Band(airframe.Flaps.InboardYM, airframe.Flaps.OutboardYM)));
        figures = new(() =>
        {
            var grids = new CoarserGrids(lattice);
            return
            [
                new(WingQuantity.LiftSlope, grids.LiftOf(IncidenceShape.Uniform(wing.SpanM))),
                new(WingQuantity.RollDamping, grids.RollingMomentOf(rolling)),
                new(WingQuantity.PanelDifference, grids.RollingMomentOf(panel)),
                new(WingQuantity.TipDifference, grids.RollingMomentOf(tip)),
                new(WingQuantity.FlapBand, grids.RollingMomentOf(flaps)),
                new(WingQuantity.AileronBand, grids.RollingMomentOf(ailerons)),
            ];
        });

        var d = airframe.Derivatives;
        // One radian of each aileron, right wing down, takes its share of incidence off the right and adds it on the left.
        var ofAilerons = -2 * IncidenceShape.FlapEffectiveness(airframe.Ailerons.ChordFraction) * RollingMomentOf(ailerons);
        Derivatives = new(d.CYBeta, d.ClBeta, d.ClP ?? RollingMomentOf(rolling), d.ClR, d.CnBeta, d.CnP, d.CnR,
            d.ClAileron ?? ofAilerons, d.CnAileron, d.CYRudder, d.ClRudder, d.CnRudder);
        mass = new(airframe.Mass.ReferenceKg, airframe.Mass.IxxKgM2, airframe.Mass.IzzKgM2, airframe.Mass.IxzKgM2, wing.AreaM2, wing.SpanM);
        FuelMomentPerLitreNm = LateralLoad.MomentPerLitreNm(airframe, Load.UsualFuelKgPerL);
        Reference = AtSpeed(airframe.Reference.CasKt);
        Refusals = [.. Uncomputable.Of(this)];
    }

    public Airframe Airframe { get; }

    public StabilityDerivatives Derivatives { get; }

    /// <summary>Where the roll tendency is quoted: the airframe's reference speed, altitude and power on a standard day.</summary>
    public FlightPoint Reference { get; }

    /// <summary>
    /// Why no steady flight of it can be computed, with stable codes and the fields to fill in: empty for every aeroplane that flies. Where there
    /// is one, a held flight is not a number and nothing is answered.
    /// </summary>
    public IReadOnlyList<Refusal> Refusals { get; }

    /// <summary>The wing's figures with what the grid leaves open, and the same by lifting line. Worked out once, when first asked for.</summary>
    public IReadOnlyList<WingFigure> Figures => figures.Value;

    /// <summary>
    /// How far apart the wing's figures are on this grid and on two coarser ones, percent of the figure, the largest of
    /// <see cref="Figures"/>. It covers the grid, not the theory.
    /// </summary>
    public double GridErrorPercent => Figures.Max(figure => figure.Checked.GridErrorPercent);

    /// <summary>In words, such as <c>40 × 2</c>: strips along the span by rows along the chord.</summary>
    public string Panels => $"{lattice.Strips.Length} × {lattice.Rows}";

    /// <summary>Loading per radian of panel incidence difference, right minus left.</summary>
    internal SpanLoading Panel { get; }

    /// <summary>Loading per radian of flap difference, right minus left, trailing edge down positive.</summary>
    internal SpanLoading Flap { get; }

    /// <summary>Loading per radian of tip incidence difference, right minus left.</summary>
    internal SpanLoading Tip { get; }

    /// <summary>Of a litre more on the right and less on the left, halves; 0 where no tank lies beside the centreline.</summary>
    internal double FuelMomentPerLitreNm { get; }

    /// <summary>For drawing: lift along the span in level flight at the reference, and what a panel incidence difference, right minus left, adds to it.</summary>
    public (IReadOnlyList<SpanwiseLift> Level, IReadOnlyList<SpanwiseLift> Change) LiftAlongTheSpan(double panelDifferenceDeg)
    {
        var scale = panelDifferenceDeg * RadPerDeg;
        return (lattice.AtLift(LiftCoefficientAtReference(Airframe, lattice.Wing.AreaM2)).Spanwise,
            [.. Panel.Spanwise.Select(lift => lift with { LiftM = scale * lift.LiftM, SectionLift = scale * lift.SectionLift })]);
    }

    /// <summary>At another speed, calibrated knots, with everything else as at <see cref="Reference"/>.</summary>
    public FlightPoint AtSpeed(double casKt) => At(casKt, Airframe.Reference.PressureAltitudeFt,
        TestPoint.StandardOatC(Airframe.Reference.PressureAltitudeFt), Airframe.Reference.PowerPercent);

    /// <summary>The aeroplane in flight where a test point was flown.</summary>
    public FlightPoint At(TestPoint point) =>
        At(point.CasKt, point.PressureAltitudeFt, point.OatC, point.PowerPercent ?? Airframe.Reference.PowerPercent, point.FlapDeg);

    /// <summary>Rolling moment coefficient of a change of incidence, right wing down positive.</summary>
    internal double RollingMomentOf(IncidenceShape shape) => lattice.Response(shape).RollingMomentCoefficient;

    /// <summary>What the wing carries: where the flaps are lowered, more of it inboard.</summary>
    internal SpanLoading Carried(double liftCoefficient, double flapDeg) => flapDeg == 0
        ? lattice.AtLift(liftCoefficient)
        : lattice.AtLift(liftCoefficient, flapsLowered.Value, flapDeg * RadPerDeg * IncidenceShape.FlapEffectiveness(Airframe.Flaps.ChordFraction));

    internal static Planform PlanformOf(WingGeometry wing) => Planform.OfStations([.. wing.Stations.Select(station =>
        new Station(station.YM, station.ChordM, station.IncidenceDeg * RadPerDeg, station.SectionLiftSlopePerRad))]);

    /// <summary>What the wing carries in level flight at the airframe's reference.</summary>
    internal static double LiftCoefficientAtReference(Airframe airframe, double wingAreaM2)
    {
        var (density, trueMPerS) = AtReference(airframe);
        return airframe.Mass.ReferenceKg * LateralModel.StandardGravity / (density * trueMPerS * trueMPerS / 2 * wingAreaM2);
    }

    internal static double TrueAirspeedAtReference(Airframe airframe) => AtReference(airframe).TrueMPerS;

    static (double DensityKgPerM3, double TrueMPerS) AtReference(Airframe airframe)
    {
        var reference = airframe.Reference;
        var air = Atmosphere.Standard(reference.PressureAltitudeFt * FootM).AtTemperature(TestPoint.StandardOatC(reference.PressureAltitudeFt) + CelsiusZeroK);
        return (air.DensityKgPerM3, Airspeed.TrueFromCalibrated(reference.CasKt * KnotMPerS, air));
    }

    FlightPoint At(double casKt, double pressureAltitudeFt, double oatC, double powerPercent, double flapDeg = 0)
    {
        var air = Atmosphere.Standard(pressureAltitudeFt * FootM).AtTemperature(oatC + CelsiusZeroK);
        var trueMPerS = Airspeed.TrueFromCalibrated(casKt * KnotMPerS, air);
        return new(this, new(Derivatives, mass, trueMPerS, air.DensityKgPerM3), powerPercent / 100, flapDeg);
    }

    SpanLoading Effective(double chordFraction, double inboardYM, double outboardYM)
    {
        var effect = IncidenceShape.FlapEffectiveness(chordFraction) / 2;
        return lattice.Response(new([new(-outboardYM, -inboardYM, -effect, -effect), new(inboardYM, outboardYM, effect, effect)]));
    }
}

/// <summary>What a figure of the wing is of. Moments are rolling moment coefficients, right wing down positive.</summary>
public enum WingQuantity
{
    /// <summary>Lift coefficient per radian of incidence.</summary>
    LiftSlope,

    /// <summary>Per unit of pb/2V.</summary>
    RollDamping,

    /// <summary>Per radian of panel incidence difference, right minus left.</summary>
    PanelDifference,

    /// <summary>Per radian of tip incidence difference, right minus left.</summary>
    TipDifference,

    /// <summary>Per radian of incidence difference over the span of the flaps, right minus left.</summary>
    FlapBand,

    /// <summary>Per radian of incidence difference over the span of the ailerons, right minus left.</summary>
    AileronBand,
}

/// <summary>One figure of the wing, from the lattice, with its grid error and the lifting line's figure beside it.</summary>
public sealed record WingFigure(WingQuantity Quantity, GridChecked Checked);
