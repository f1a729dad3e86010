using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Estimates;

/// <summary>
/// Fills in what a school does not know of its aeroplane from what it can measure: wing, fuselage, fin, rudder, propeller, mass. A figure that is
/// on file is never touched; one that is filled in goes on the list of <see cref="Airframe.Estimated"/> with its method, source and expected accuracy.
/// </summary>
/// <remarks>
/// Each figure is a sum of shares of wing, fuselage, fin and propeller, by the methods of the USAF Stability and Control Datcom as Airplane Design,
/// Part VI (1985), section 10.2, has them; the books were not read, their formulas were read in public programs that quote them (see
/// <see cref="Datcom"/> and the other sources). A share's accuracy is judgement, no source; shares err each for itself, so the accuracy of a figure
/// whose shares cancel, such as the yaw of fin and fuselage, is that much worse and comes out of the sum. Straight wings only: sweep is left out.
/// The struts of a wing, the undercarriage and the tailplane are left out too.
/// </remarks>
public static class GeometryEstimates
{
    /// <summary>
    /// Radii of gyration over span: the mean of two published sets of one four-seat type (NASA CR-96008 by way of Flight Stability and
    /// Automatic Control, 1998: 0.105 and 0.193; FAA-RD-71-6, 1971: 0.112 and 0.178), both read second-hand.
    /// </summary>
    public const double RollGyrationPerSpan = 0.108, YawGyrationPerSpan = 0.185;

    const string
        Datcom = "USAF Datcom by way of Airplane Design, Part VI (1985), 10.2, read in public programs that quote it (FAST-GA, SUAVE, a course of 2001)",
        Propellers = "Synthesis of Subsonic Airplane Design (1982), read in a public program that quotes it, and NACA report 820 (abstract read): a propeller in yaw acts like a fin",
        Textbook = "textbook relation; its accuracy is judgement, no source";

    /// <summary>
    /// What the fin's effective aspect ratio is of its own, the fuselage as an end plate (Datcom, from 1.5 to 1.63 where the fin is two fuselage depths
    /// high); only the chord of the fin is taken from it.
    /// </summary>
    const double EndPlate = 1.55;

    /// <summary>Of thin-aerofoil effectiveness: what a short fin gains and the gap and friction lose, together; from memory.</summary>
    const double RudderReal = 0.9;

    /// <summary>Side of the fuselage over length times depth: 0.48 and 0.46 of two printed fuselages (the course of 2001; a study of a twin).</summary>
    const double SideFullness = 0.47;

    /// <summary>Root of the fuselage's depth at a quarter of its length over that at three quarters: 1.15 of the printed one, judgement.</summary>
    const double Narrowing = 1.2;

    /// <summary>
    /// Section where the flow leaves the body over the greatest one. It leaves at 0.378 + 0.527·x₁ of the length (Datcom), x₁ where the section shrinks
    /// fastest: 0.64 for the half length that is printed for one type. A fuselage that narrows evenly from there to a fifth at its end has 0.6 of the
    /// section; of the printed one it is 0.3. Judgement between them and the published side forces.
    /// </summary>
    const double SectionWhereFlowLeaves = 0.6;

    const double KinematicViscosityM2PerS = 1.46e-5;

    /// <summary>The fin's quarter chord is so much of the fuselage's length ahead of its end; judgement.</summary>
    const double FinAheadOfEnd = 0.07;

    /// <summary>Drag without lift of a light aeroplane; 0.027 and 0.05 of the published sets.</summary>
    const double ProfileDrag = 0.03;

    /// <summary>
    /// Judgement, no source: 75 kW at 2500 turns a minute are 290 N·m, on 14 m², 9.6 m and 95 kt 0.0014 of rolling moment, and the wing
    /// straightens half of the swirl; the yaw is that which a degree of fin offset, as many have, takes out.
    /// </summary>
    const double SlipstreamRoll = -0.0006, SlipstreamYaw = -0.0013, SlipstreamAccuracy = 60;

    const string Unsourced = "judgement, no source";

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
            SlipstreamClAtFullPower = Of(EstimableFigure.SlipstreamClAtFullPower, d.SlipstreamClAtFullPower),
            SlipstreamCnAtFullPower = Of(EstimableFigure.SlipstreamCnAtFullPower, d.SlipstreamCnAtFullPower),
        };
        return airframe with { Mass = mass, Derivatives = derivatives, Estimated = used.Count > 0 ? used : null };
    }

    /// <summary>Every figure that geometry gives, whatever is on file; for comparing.</summary>
    public static IReadOnlyList<EstimatedFigure> Figures(Airframe airframe, Fin fin)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        ArgumentNullException.ThrowIfNull(fin);
        var shape = new OutsideShape(airframe);
        var lattice = new VortexLattice(Aeroplane.PlanformOf(airframe.Wing));
        var (spanM, areaM2, aspectRatio) = (lattice.Wing.SpanM, lattice.Wing.AreaM2, lattice.Wing.AspectRatio);
        var lift = Aeroplane.LiftCoefficientAtReference(airframe, areaM2);
        var carried = lattice.AtLift(lift);
        // Σ l·y² over Σ l, in spans: 1/16 for elliptic lift, which gives the textbook's CL/4.
        var arm2 = carried.MeanSquareYM2 / (spanM * spanM);
        var (arm, height) = (fin.ArmM / spanM, fin.HeightM / spanM);
        var dihedralDeg = airframe.Wing.DihedralDeg;

        var finSide = Fin();
        var bodySide = BodySide();
        var wingSide = Share.Good(-0.00573 * Math.Abs(dihedralDeg), 50);
        var propellerSide = Propeller();
        var dihedral = 2 * dihedralDeg * Math.PI / 180 * lattice.Response(IncidenceShape.BandDifference(0, spanM / 2)).RollingMomentCoefficient;
        var ailerons = airframe.Ailerons;
        var aileron = -2 * IncidenceShape.FlapEffectiveness(ailerons.ChordFraction)
            * carried.YawingMomentOf(lattice.Response(IncidenceShape.BandDifference(ailerons.InboardYM, Math.Min(ailerons.OutboardYM, spanM / 2))));
        List<EstimatedFigure> figures =
        [
            Sum(EstimableFigure.CYBeta, "fin in the sidewash of wing and fuselage, fuselage by its greatest section and the wing's place on it, dihedral, propeller", airframe.Propeller is null ? Datcom : $"{Datcom}; {Propellers}",
                finSide, bodySide, wingSide, propellerSide),
            Sum(EstimableFigure.ClBeta, "wing lattice with dihedral times sideslip as incidence, the fuselage's effect on dihedral and by the wing's place on it, the fin at its height", Datcom,
                Share.Good(dihedral, 25), Share.Good(-0.0005 * aspectRatio * Square(shape.DiameterM / spanM) * dihedralDeg * 57.3, 50), WingPlace(), height * finSide),
            Sum(EstimableFigure.ClR, "lift of the advancing wing at its own lever, and the fin", Textbook,
                Share.Good(4 * lift * arm2, 20), -2 * arm * height * finSide),
            Sum(EstimableFigure.CnBeta, "fin at its arm; fuselage by its side, length and the centre of mass, turning the other way; propeller; lift of the wing", airframe.Propeller is null ? Datcom : $"{Datcom}; {Propellers}",
                -arm * finSide, BodyYaw(), airframe.Propeller is { } turning ? turning.ArmM / spanM * propellerSide : default, Share.Good(lift * lift / (4 * Math.PI * aspectRatio), 50)),
            Sum(EstimableFigure.CnP, "lift of the wing tilted by the roll rate, −CL/6·A/(A + 4); the wing's own sidewash takes out the fin's part", Datcom,
                Share.Good(-lift / 6 * aspectRatio / (aspectRatio + 4), 35)),
            Sum(EstimableFigure.CnR, "fin at its arm squared; drag of the wing", Datcom,
                2 * arm * arm * finSide, Share.Good(-0.02 * lift * lift - 0.3 * ProfileDrag, 50)),
            Sum(EstimableFigure.CnAileron, "induced drag of the aileron's lift by the wing lattice; profile drag left out", Textbook, Share.Good(aileron, 50)),
            // Taken for nothing they were known for certain, and a flight at full power was explained by whatever else there was.
            new(EstimableFigure.SlipstreamClAtFullPower, SlipstreamRoll,
                "usual of a light single, propeller turning right seen from behind: the engine's torque, half of it taken back by the wing in the stream",
                Unsourced, SlipstreamAccuracy),
            new(EstimableFigure.SlipstreamCnAtFullPower, SlipstreamYaw,
                "usual of the same: oblique blades, and the swirl of the stream at the fin", Unsourced, SlipstreamAccuracy),
        ];
        if (airframe.Rudder?.AreaM2 is { } rudderM2)
        {
            var share = Math.Min(rudderM2 / fin.AreaM2, 1);
            var rudder = Share.Good(RudderReal * fin.LiftSlopePerRad * fin.AreaM2 / areaM2 * IncidenceShape.FlapEffectiveness(share), 20);
            var rudderArm = arm + ChordM(fin) * BehindQuarterChord(share) / spanM;
            const string method = "fin lift slope times nine tenths of thin-aerofoil effectiveness of the rudder's share of fin and rudder, without sidewash";
            figures.Add(Sum(EstimableFigure.CYRudder, method, Datcom, rudder));
            figures.Add(Sum(EstimableFigure.ClRudder, "the rudder's side force at the fin's height", Datcom, Share.Good(height * rudder.Value, 40)));
            figures.Add(Sum(EstimableFigure.CnRudder, "the rudder's side force at its own arm: its centre of pressure lies behind the fin's", Datcom, -rudderArm * rudder));
        }
        return figures;

        EstimatedFigure Sum(EstimableFigure figure, string method, string source, params ReadOnlySpan<Share> shares)
        {
            var sum = 0.0;
            foreach (var one in shares)
                sum += one.Value;
            return new(figure, sum, method + shape.Assumed, source, Share.Percent(shares));
        }

        Share Fin()
        {
            var slope = -fin.LiftSlopePerRad * fin.AreaM2 / areaM2;
            var sidewash = 0.724 + 3.06 / 2 * fin.AreaM2 / areaM2 + 0.4 * shape.RootBelowMiddle.Value + 0.009 * aspectRatio;
            return Share.Good(slope * sidewash, 20) with { Sd = Root(0.2 * slope * sidewash, slope * 0.4 * shape.RootBelowMiddle.Sd) };
        }

        Share BodySide()
        {
            var section = -2 * SectionWhereFlowLeaves * Math.PI / 4 * shape.DepthM * shape.WidthM / areaM2;
            var off = 2 * shape.RootBelowMiddle.Value * shape.DepthM / shape.DiameterM;
            // Where the wing is unknown: the mean of 1, 1.85 and 1.49 times, by how far off the middle it may be.
            var unknown = 2 * shape.RootBelowMiddle.Sd * shape.DepthM / shape.DiameterM;
            var interference = 1 + (off < 0 ? -0.85 * off : 0.49 * off) + 0.55 * unknown;
            return new(section * interference, Root(section * interference * (shape.FuselageIsAssumed ? 0.45 : 0.35), section * 0.55 * unknown));
        }

        Share BodyYaw()
        {
            var centre = Math.Clamp(1 - FinAheadOfEnd - fin.ArmM / shape.LengthM, 0.2, 0.5);
            var sideM2 = SideFullness * shape.LengthM * shape.DepthM;
            // The chart of the empirical factor, as SUAVE has fitted it; 0.3 to 2 of depth over width.
            var byCentre = 3.2413 * centre - 0.663345 + 6.1086 * Math.Exp(-0.22 * shape.LengthM * shape.LengthM / sideM2);
            var tall = Math.Clamp(shape.DepthM / shape.WidthM, 0.3, 2);
            var bySection = 0.7870 + 0.1038 * tall + 0.1834 * tall * tall - 2.811 * Math.Exp(-4 * tall);
            var factor = (-0.47899 + bySection * (-0.2023 + 1.3422 * Narrowing - 0.1454 * Narrowing * Narrowing) * byCentre) / 1000;
            var reynolds = 1 + 0.8 * Math.Log(shape.LengthM * Aeroplane.TrueAirspeedAtReference(airframe) / KinematicViscosityM2PerS / 1e6) / Math.Log(50);
            return Share.Good(-57.3 * Math.Max(0, factor) * reynolds * sideM2 * shape.LengthM / (areaM2 * spanM), shape.FuselageIsAssumed ? 60 : 50);
        }

        Share WingPlace()
        {
            var perDepth = 1.2 * Math.Sqrt(aspectRatio) * shape.DepthM / spanM * 2 * shape.DiameterM / spanM;
            return new(perDepth * shape.RootBelowMiddle.Value, perDepth * Root(0.4 * shape.RootBelowMiddle.Value, shape.RootBelowMiddle.Sd));
        }

        Share Propeller() => airframe.Propeller is { } propeller
            ? Share.Good(-0.053 * propeller.Blades * Square(propeller.DiameterM) / areaM2, 30)
            : default;
    }

    /// <summary>The fin's mean chord, from its lift slope by the relation of aspect ratio and lift slope a = 2πA/(2 + √(A² + 4)) turned round.</summary>
    static double ChordM(Fin fin)
    {
        var slope = Math.Min(fin.LiftSlopePerRad / (2 * Math.PI), 0.9);
        return Math.Sqrt(fin.AreaM2 * EndPlate * (1 - slope * slope) / (4 * slope));
    }

    /// <summary>
    /// How far behind the quarter chord the lift of a flap stands, chords: ½·sin θ·(1 − cos θ) over 2·(π − θ + sin θ), θ = acos(2E − 1), thin-aerofoil
    /// theory; a quarter for a narrow flap and nothing where all of the chord turns.
    /// </summary>
    static double BehindQuarterChord(double chordFraction)
    {
        var theta = Math.Acos(2 * chordFraction - 1);
        return Math.Sin(theta) * (1 - Math.Cos(theta)) / (4 * (Math.PI - theta + Math.Sin(theta)));
    }

    static double Square(double value) => value * value;

    static double Root(double one, double other) => Math.Sqrt(one * one + other * other);

    static MassProperties Inertias(Airframe airframe, out IReadOnlyList<EstimatedFigure> used)
    {
        const string source = "NASA CR-96008 and FAA-RD-71-6, one four-seat type, second-hand; they differ by 22 % between themselves";
        List<EstimatedFigure> list = [];
        double Of(EstimableFigure field, double onFile, double perSpan)
        {
            if (!double.IsNaN(onFile))
                return onFile;
            var value = airframe.Mass.ReferenceKg * Square(perSpan * airframe.Wing.SpanM);
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
