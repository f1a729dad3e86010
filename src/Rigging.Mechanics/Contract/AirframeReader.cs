using Rigging.Mechanics.Estimates;

namespace Rigging.Mechanics.Contract;

/// <summary>The airframe's fields, the range each may have, and what must agree between them.</summary>
/// <remarks>Ranges say what is physical for a light aeroplane, not what is usual; common practice, no source.</remarks>
static class AirframeReader
{
    static readonly Within LateralM = new(0, 20, "m");
    static readonly Within ArmM = new(-20, 20, "m");
    static readonly Within ChordFraction = new(0.05, 0.6);
    static readonly Within Gain = new(0, 3);
    static readonly Within SpeedKt = new(15, 400, "kt");
    static readonly Within Derivative = new(-5, 5);
    static readonly Within ZeroOrLess = new(-5, 0);
    static readonly Within ZeroOrMore = new(0, 5);
    static readonly Within Coefficient = new(-0.05, 0.05);

    public static Airframe Read(FieldReader airframe)
    {
        // With a fin on file, what is not given is estimated; until then NaN stands for it.
        var fin = airframe.ObjectIfGiven("fin", Fin);
        var rudderRead = airframe.ObjectIfGiven("rudder", rudder => new RudderGeometry(
            rudder.Number("fixedTabGain", Gain), rudder.NumberIfGiven("areaM2", new(0.05, 5, "m²")), rudder.ObjectIfGiven("fixedTabBend", AdjusterReader.TabBend)));
        var (estimates, ofRudder) = (airframe.Has("fin"), rudderRead?.AreaM2 is not null);
        var wing = airframe.Object("wing", Wing);
        var halfSpanM = wing?.SpanM / 2 ?? double.NaN;
        var read = new Airframe(
            airframe.Text("id", 60),
            airframe.Text("name"),
            airframe.TextIfGiven("approvedData"),
            wing!,
            airframe.ObjectIfGiven("eccentric", Eccentric),
            airframe.Object("ailerons", ailerons => Ailerons(ailerons, halfSpanM)),
            airframe.Object("flaps", flaps => Flaps(flaps, halfSpanM)),
            rudderRead,
            airframe.Object("mass", mass => Mass(mass, estimates)),
            estimates && !airframe.Has("derivatives")
                ? airframe.NotGiven<LateralDerivatives>("derivatives") ?? NothingOnFile(airframe, ofRudder)
                : airframe.Object("derivatives", derivatives => Derivatives(derivatives, estimates, ofRudder)),
            airframe.Objects("tanks", 1, 8, tank => new Tank(tank.Text("name", 40), tank.Number("armM", ArmM), tank.Number("capacityL", new(1, 2000, "L")))),
            airframe.WordIfGiven<FuelSelector>("fuelSelector"),
            airframe.Objects("seats", 1, 12, seat => new Seat(seat.Text("name", 40), seat.Number("armM", ArmM))),
            airframe.Number("ballDegPerWidth", new(0.5, 20, "° per width")),
            airframe.ObjectIfGiven("speedsKt", Speeds),
            airframe.Object("reference", Reference),
            airframe.ObjectIfGiven("limits", Limits),
            airframe.Has("baggage")
                ? airframe.Objects("baggage", 0, 8, compartment => new BaggageCompartment(compartment.Text("name", 40), compartment.Number("armM", ArmM)))
                : airframe.NotGiven<IReadOnlyList<BaggageCompartment>>("baggage"),
            fin,
            airframe.Has("estimated") ? airframe.Objects("estimated", 0, Enum.GetValues<EstimableFigure>().Length, Estimated) : airframe.NotGiven<IReadOnlyList<EstimatedFigure>>("estimated"),
            airframe.ObjectIfGiven("strutFork", fork => AdjusterReader.StrutFork(fork, wing)),
            airframe.ObjectIfGiven("flapRod", AdjusterReader.FlapRod),
            airframe.Has("priors") ? airframe.Objects("priors", 0, Enum.GetValues<Cause>().Length, Prior) : airframe.NotGiven<IReadOnlyList<PriorOnFile>>("priors"),
            airframe.ObjectIfGiven("fuselage", Fuselage),
            airframe.ObjectIfGiven("propeller", Propeller),
            airframe.Has("cables") ? airframe.Objects("cables", 0, 30, ControlsReader.Cable) : airframe.NotGiven<IReadOnlyList<CableOnFile>>("cables"),
            airframe.Has("travel")
                ? airframe.Objects("travel", 0, Enum.GetValues<ControlSurface>().Length, ControlsReader.Travel)
                : airframe.NotGiven<IReadOnlyList<TravelOnFile>>("travel"));
        foreach (var twice in (read.Travel ?? []).OfType<TravelOnFile>().GroupBy(travel => travel.Surface).Where(same => same.Count() > 1))
            airframe.Fault(airframe.PathTo("travel"), Wire.Word(twice.Key), "each surface once");
        foreach (var twice in (read.Priors ?? []).OfType<PriorOnFile>().GroupBy(prior => prior.Cause).Where(cause => cause.Count() > 1))
            airframe.Fault(airframe.PathTo("priors"), Wire.Word(twice.Key), "each cause once");
        var namesDiffer = NamesDiffer(airframe, "tanks", read.Tanks.Select(tank => tank?.Name)) & NamesDiffer(airframe, "seats", read.Seats.Select(seat => seat?.Name))
            & NamesDiffer(airframe, "cables", (read.Cables ?? []).Select(cable => cable?.Name))
            & NamesDiffer(airframe, "baggage", (read.Baggage ?? []).Select(compartment => compartment?.Name));
        if (namesDiffer && read.Reference?.Load is { } load)
            LoadReader.Check(load, read, $"{airframe.PathTo("reference")}.load", airframe.Fault);
        return airframe.Clean ? Completed(airframe, read) : read;
    }

    static Airframe Completed(FieldReader airframe, Airframe read)
    {
        var completed = GeometryEstimates.Complete(read);
        foreach (var figure in (completed.Estimated ?? []).Where(figure => !double.IsFinite(figure.Value)))
            airframe.Fault(airframe.PathTo("fin"), Wire.Word(figure.Figure), "a geometry that gives a number for it");
        if (completed.Mass is var mass && mass.IxzKgM2 * mass.IxzKgM2 >= mass.IxxKgM2 * mass.IzzKgM2)
            airframe.Fault($"{airframe.PathTo("mass")}.ixzKgM2", FormattableString.Invariant($"{mass.IxzKgM2}"), "a product of inertia smaller than the root of both inertias' product");
        return completed;
    }

    static Fin Fin(FieldReader fin) => new(
        fin.Number("areaM2", new(0.2, 10, "m²")),
        fin.Number("armM", new(1, 20, "m")),
        fin.Number("heightM", new(-1, 5, "m")),
        fin.Number("liftSlopePerRad", new(0.5, 6.3, "per rad")));

    static Fuselage Fuselage(FieldReader fuselage) => new(
        fuselage.NumberIfGiven("lengthM", new(2, 40, "m")), fuselage.NumberIfGiven("depthM", new(0.4, 5, "m")), fuselage.NumberIfGiven("widthM", new(0.4, 5, "m")));

    static Propeller Propeller(FieldReader propeller) => new(
        propeller.Number("diameterM", new(0.5, 5, "m")), propeller.Whole("blades", 1, 8), propeller.Number("armM", new(-10, 10, "m")));

    static EstimatedFigure Estimated(FieldReader figure) => new(
        figure.Word<EstimableFigure>("figure") ?? default, figure.Number("value", new(-1e6, 1e6)), figure.Text("method", 400), figure.Text("source", 400),
        figure.Number("accuracyPercent", new(0, 200, "%")));

    static PriorOnFile Prior(FieldReader prior) => new(
        prior.Word<Cause>("cause") ?? default, prior.NumberIfGiven("probability", new(0.001, 0.9)), prior.NumberIfGiven("spread", new(0.0001, 1000)), prior.Text("reason", 400));

    /// <summary>All of it is to be estimated, and without the rudder's area that cannot be.</summary>
    static LateralDerivatives NothingOnFile(FieldReader airframe, bool ofRudder)
    {
        if (!ofRudder)
            airframe.Fault($"{airframe.PathTo("derivatives")}.cYRudder", null, "a number, or rudder.areaM2 to estimate it from");
        return new(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
    }

    static WingGeometry Wing(FieldReader wing)
    {
        var spanM = wing.Number("spanM", new(3, 40, "m"));
        var read = new WingGeometry(
            spanM,
            wing.Number("dihedralDeg", new(-15, 15, "°")),
            wing.Word<Bracing>("bracing") ?? default,
            wing.Objects("stations", 2, 60, station => new WingStation(
                station.Number("yM", LateralM),
                station.Number("chordM", new(0.1, 10, "m")),
                station.Number("incidenceDeg", new(-15, 15, "°")),
                station.Number("sectionLiftSlopePerRad", new(2, 8, "per rad")))),
            wing.Number("sparSpacingM", new(0.05, 5, "m")),
            wing.Number("panelInboardYM", LateralM),
            wing.WordIfGiven<WingPosition>("position"));
        if (read.PanelInboardYM >= spanM / 2)
            wing.Refuse("panelInboardYM", "less than half the span");
        StationsReachFromRootToTip(wing, read);
        return read;
    }

    static void StationsReachFromRootToTip(FieldReader wing, WingGeometry read)
    {
        // Files carry millimetres at best.
        const double toleranceM = 0.001;
        double[] yM = [.. read.Stations.Select(station => station?.YM ?? double.NaN)];
        string At(int index) => $"stations[{index}].yM";
        void Refuse(int index, string wanted) => wing.Fault($"{wing.Path}.{At(index)}", FormattableString.Invariant($"{yM[index]}"), wanted);

        for (var index = 1; index < yM.Length; index++)
        {
            if (yM[index] <= yM[index - 1])
                Refuse(index, FormattableString.Invariant($"stations in order from root to tip: more than {yM[index - 1]}"));
        }
        if (yM.Length < 2)
            return;
        if (yM[0] > toleranceM)
            Refuse(0, "0: the first station at the centreline");
        if (Math.Abs(yM[^1] - read.SpanM / 2) > toleranceM)
            Refuse(yM.Length - 1, FormattableString.Invariant($"{read.SpanM / 2}: the last station at half the span"));
    }

    static EccentricOnFile Eccentric(FieldReader eccentric) => new(
        eccentric.Number("throwMm", new(0.05, 20, "mm")),
        eccentric.Whole("headFlats", 3, 24),
        eccentric.Number("maxAngleDeg", new(1, 180, "°")),
        eccentric.WordIfGiven<BushingIn>("bushingIn"),
        eccentric.ObjectIfGiven("neutralOffset", offset =>
            new NeutralOffset(offset.Word<Spanwise>("left") ?? default, offset.Word<Spanwise>("right") ?? default)),
        eccentric.ObjectIfGiven("fastener", Fastener),
        eccentric.Text("source"));

    static FastenerOnFile Fastener(FieldReader fastener) => new(
        fastener.Text("thread", 40),
        fastener.Text("nut", 80),
        fastener.Shape("torqueInLb", (element, path) => TorquePair.Read(fastener, element, path)),
        fastener.FlagIfGiven("includesPrevailing"),
        fastener.WordIfGiven<Lubrication>("lubrication"),
        fastener.WordIfGiven<TurnedPart>("turned"));

    static AileronGeometry Ailerons(FieldReader ailerons, double halfSpanM)
    {
        var read = new AileronGeometry(
            ailerons.Number("inboardYM", LateralM),
            ailerons.Number("outboardYM", LateralM),
            ailerons.Number("chordFraction", ChordFraction),
            ailerons.ObjectIfGiven("fixedTab", tab => new FixedTab(
                tab.Word<Side>("side") ?? default, tab.Number("gain", Gain), tab.ObjectIfGiven("bend", AdjusterReader.TabBend))),
            ailerons.Number("wheelDegPerAileronDeg", new(0.1, 30, "° per °")),
            ailerons.Number("wheelForceNPerAileronDegAtReference", new(0, 200, "N per °")));
        OnTheWing(ailerons, read.InboardYM, read.OutboardYM, halfSpanM);
        return read;
    }

    static FlapGeometry Flaps(FieldReader flaps, double halfSpanM)
    {
        var read = new FlapGeometry(flaps.Number("inboardYM", LateralM), flaps.Number("outboardYM", LateralM), flaps.Number("chordFraction", ChordFraction));
        OnTheWing(flaps, read.InboardYM, read.OutboardYM, halfSpanM);
        return read;
    }

    static void OnTheWing(FieldReader surface, double inboardYM, double outboardYM, double halfSpanM)
    {
        if (outboardYM <= inboardYM)
            surface.Refuse("outboardYM", "more than inboardYM");
        if (outboardYM > halfSpanM)
            surface.Refuse("outboardYM", "at most half the span");
    }

    static MassProperties Mass(FieldReader mass, bool estimates)
    {
        var inertia = new Within(10, 100_000, "kg·m²");
        var read = new MassProperties(
            mass.Number("referenceKg", new(100, 6000, "kg")),
            GivenOrEstimated(mass, "ixxKgM2", inertia, estimates),
            GivenOrEstimated(mass, "izzKgM2", inertia, estimates),
            mass.NumberIfGiven("ixzKgM2", new(-50_000, 50_000, "kg·m²")) ?? 0);
        if (read.IxzKgM2 * read.IxzKgM2 >= read.IxxKgM2 * read.IzzKgM2)
            mass.Refuse("ixzKgM2", "a product of inertia smaller than the root of ixxKgM2 times izzKgM2");
        return read;
    }

    static LateralDerivatives Derivatives(FieldReader derivatives, bool estimates, bool ofRudder) => new(
        GivenOrEstimated(derivatives, "cYBeta", ZeroOrLess, estimates),
        GivenOrEstimated(derivatives, "clBeta", Derivative, estimates),
        GivenOrEstimated(derivatives, "clR", Derivative, estimates),
        GivenOrEstimated(derivatives, "cnBeta", Derivative, estimates),
        GivenOrEstimated(derivatives, "cnP", Derivative, estimates),
        GivenOrEstimated(derivatives, "cnR", ZeroOrLess, estimates),
        GivenOrEstimated(derivatives, "cYRudder", ZeroOrMore, estimates && ofRudder),
        GivenOrEstimated(derivatives, "clRudder", Derivative, estimates && ofRudder),
        GivenOrEstimated(derivatives, "cnRudder", ZeroOrLess, estimates && ofRudder),
        GivenOrEstimated(derivatives, "cnAileron", Derivative, estimates),
        derivatives.NumberIfGiven("slipstreamClAtFullPower", Coefficient) ?? (estimates ? double.NaN : 0),
        derivatives.NumberIfGiven("slipstreamCnAtFullPower", Coefficient) ?? (estimates ? double.NaN : 0),
        derivatives.NumberIfGiven("clP", new(-5, -0.01)),
        derivatives.NumberIfGiven("clAileron", new(0.001, 5)));

    static double GivenOrEstimated(FieldReader fields, string name, Within range, bool estimates) =>
        estimates ? fields.NumberIfGiven(name, range) ?? double.NaN : fields.Number(name, range);

    static SpeedLimits Speeds(FieldReader speeds)
    {
        var read = new SpeedLimits(
            speeds.Number("stallClean", SpeedKt),
            speeds.Number("flapLimit", SpeedKt),
            speeds.Number("manoeuvring", SpeedKt),
            speeds.Number("maxStructuralCruise", SpeedKt),
            speeds.Number("neverExceed", SpeedKt));
        if (read.FlapLimit <= read.StallClean)
            speeds.Refuse("flapLimit", "more than stallClean");
        if (read.Manoeuvring <= read.StallClean)
            speeds.Refuse("manoeuvring", "more than stallClean");
        if (read.MaxStructuralCruise < read.Manoeuvring)
            speeds.Refuse("maxStructuralCruise", "at least manoeuvring");
        if (read.NeverExceed <= read.MaxStructuralCruise)
            speeds.Refuse("neverExceed", "more than maxStructuralCruise");
        return read;
    }

    static ReferencePoint Reference(FieldReader reference) => new(
        reference.Number("casKt", RequestReader.CasKt),
        reference.Number("pressureAltitudeFt", RequestReader.PressureAltitudeFt),
        reference.Number("powerPercent", RequestReader.PowerPercent),
        reference.Object("load", LoadReader.Read));

    static RiggingLimits Limits(FieldReader limits) => new(
        limits.Number("acceptableRollTendencyDegPerS", new(0.01, 10, "°/s")),
        limits.Number("maxPanelIncidenceDifferenceDeg", new(0.01, 5, "°")),
        limits.Number("incidenceStepFlats", new(0.05, 3, "flats")));

    static bool NamesDiffer(FieldReader airframe, string list, IEnumerable<string?> names)
    {
        var repeated = names.OfType<string>().Where(name => name.Length > 0).GroupBy(name => name, StringComparer.Ordinal).Where(same => same.Count() > 1).ToArray();
        foreach (var name in repeated)
            airframe.Fault(airframe.PathTo(list), $"\"{JsonText.Shorten(name.Key)}\" {name.Count()} times", "a different name for each");
        return repeated.Length == 0;
    }
}
