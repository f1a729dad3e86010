using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Estimates;

/// <summary>
/// Fills in what a school does not know of its aeroplane from what it can measure: wing, fin, rudder, mass. A figure that is on file is
/// never touched; one that is filled in goes on the list of <see cref="Airframe.Estimated"/> with its method, source and expected accuracy.
/// </summary>
/// <remarks>
/// The fin is a lifting surface in the free stream: no sidewash, no fuselage. So the estimates of sideslip and yaw are rough, and which way
/// they are wrong is said with each. Accuracies are judgement, no source, except where a check is named.
/// </remarks>
public static class GeometryEstimates
{
    /// <summary>
    /// Radii of gyration over span: the mean of two published sets of one four-seat type (NASA CR-96008 by way of Flight Stability and
    /// Automatic Control, 1998: 0.105 and 0.193; FAA-RD-71-6, 1971: 0.112 and 0.178), both read second-hand.
    /// </summary>
    public const double RollGyrationPerSpan = 0.108, YawGyrationPerSpan = 0.185;

    const string Judgement = "textbook relation; its accuracy is judgement, no source";

    /// <summary>The airframe with every figure that is not a number replaced by an estimate; it needs a fin on file for that.</summary>
    public static Airframe Complete(Airframe airframe)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        if (airframe.Fin is not { } fin)
            return airframe;
        var mass = Inertias(airframe, out var ofMass);
        var all = Figures(airframe, fin).ToDictionary(figure => figure.Figure);
        List<EstimatedFigure> used = [.. airframe.Estimated ?? [], .. ofMass];
        double Of(EstimableFigure field, double onFile)
        {
            if (!double.IsNaN(onFile))
                return onFile;
            used.Add(all[field]);
            return all[field].Value;
        }
        var d = airframe.Derivatives;
        var derivatives = d with
        {
            CYBeta = Of(EstimableFigure.CYBeta, d.CYBeta),
            ClBeta = Of(EstimableFigure.ClBeta, d.ClBeta),
            ClR = Of(EstimableFigure.ClR, d.ClR),
            CnBeta = Of(EstimableFigure.CnBeta, d.CnBeta),
            CnP = Of(EstimableFigure.CnP, d.CnP),
            CnR = Of(EstimableFigure.CnR, d.CnR),
            CYRudder = Of(EstimableFigure.CYRudder, d.CYRudder),
            ClRudder = Of(EstimableFigure.ClRudder, d.ClRudder),
            CnRudder = Of(EstimableFigure.CnRudder, d.CnRudder),
            CnAileron = Of(EstimableFigure.CnAileron, d.CnAileron),
        };
        return airframe with { Mass = mass, Derivatives = derivatives, Estimated = used.Count > 0 ? used : null };
    }

    /// <summary>Every figure that geometry gives, whatever is on file; for comparing.</summary>
    public static IReadOnlyList<EstimatedFigure> Figures(Airframe airframe, Fin fin)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        ArgumentNullException.ThrowIfNull(fin);
        var lattice = new VortexLattice(Aeroplane.PlanformOf(airframe.Wing));
        var (spanM, areaM2) = (lattice.Wing.SpanM, lattice.Wing.AreaM2);
        var lift = Aeroplane.LiftCoefficientAtReference(airframe, areaM2);
        var carried = lattice.AtLift(lift);
        // Σ l·y² over Σ l, in spans: 1/16 for elliptic lift, which gives the textbook's CL/4 and −CL/8.
        var arm2 = carried.MeanSquareYM2 / (spanM * spanM);
        var (arm, height) = (fin.ArmM / spanM, fin.HeightM / spanM);
        var side = -fin.LiftSlopePerRad * fin.AreaM2 / areaM2;
        var dihedral = 2 * airframe.Wing.DihedralDeg * Math.PI / 180
            * lattice.Response(IncidenceShape.BandDifference(0, spanM / 2)).RollingMomentCoefficient;
        var rollRate = carried.YawingMomentOf(lattice.Response(IncidenceShape.RollRate(spanM)));
        var ailerons = airframe.Ailerons;
        var aileron = -2 * IncidenceShape.FlapEffectiveness(ailerons.ChordFraction)
            * carried.YawingMomentOf(lattice.Response(IncidenceShape.BandDifference(ailerons.InboardYM, Math.Min(ailerons.OutboardYM, spanM / 2))));
        List<EstimatedFigure> figures =
        [
            new(EstimableFigure.CYBeta, side, "fin lift slope times fin over wing area; fuselage left out, so too small", Judgement, 40),
            new(EstimableFigure.ClBeta, dihedral + side * height, "wing lattice with dihedral times sideslip as incidence, and the fin's height; height of the wing on the fuselage left out, so too small for a high wing", Judgement, 40),
            new(EstimableFigure.ClR, 4 * lift * arm2 - 2 * side * arm * height, "lift of the advancing wing at its own lever, and the fin", Judgement, 25),
            new(EstimableFigure.CnBeta, -side * arm, "fin side force at its arm; the fuselage turns it the other way and is left out, so too large", Judgement, 40),
            new(EstimableFigure.CnP, -2 * lift * arm2 + rollRate - 2 * side * arm * height, "tilt of the lift by the roll rate, induced drag from the wing lattice, and the fin", "textbook relations; half of the one published figure it was held against, and so is its accuracy", 60),
            new(EstimableFigure.CnR, 2 * side * arm * arm, "fin at its arm squared; drag of the wing left out, so too small", Judgement, 35),
            new(EstimableFigure.CnAileron, aileron, "induced drag of the aileron's lift by the wing lattice; profile drag left out", Judgement, 50),
        ];
        if (airframe.Rudder?.AreaM2 is { } rudderM2)
        {
            var rudder = -side * IncidenceShape.FlapEffectiveness(Math.Min(rudderM2 / fin.AreaM2, 1));
            figures.Add(new(EstimableFigure.CYRudder, rudder, "fin lift slope times thin-aerofoil effectiveness of the rudder's share of fin and rudder", Judgement, 30));
            figures.Add(new(EstimableFigure.ClRudder, rudder * height, "the same at the fin's height", Judgement, 50));
            figures.Add(new(EstimableFigure.CnRudder, -rudder * arm, "the same at the fin's arm", Judgement, 30));
        }
        return figures;
    }

    static MassProperties Inertias(Airframe airframe, out IReadOnlyList<EstimatedFigure> used)
    {
        const string source = "NASA CR-96008 and FAA-RD-71-6, one four-seat type, second-hand; they differ by 22 % between themselves";
        List<EstimatedFigure> list = [];
        double Of(EstimableFigure field, double onFile, double perSpan)
        {
            if (!double.IsNaN(onFile))
                return onFile;
            var value = airframe.Mass.ReferenceKg * Math.Pow(perSpan * airframe.Wing.SpanM, 2);
            list.Add(new(field, value, FormattableString.Invariant($"mass times the square of {perSpan} of the span"), source, 25));
            return value;
        }
        used = list;
        return airframe.Mass with
        {
            IxxKgM2 = Of(EstimableFigure.RollInertia, airframe.Mass.IxxKgM2, RollGyrationPerSpan),
            IzzKgM2 = Of(EstimableFigure.YawInertia, airframe.Mass.IzzKgM2, YawGyrationPerSpan),
        };
    }
}
