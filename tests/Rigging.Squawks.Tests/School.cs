using System.Text.Json.Nodes;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.RuleSets;
using Rigging.Squawks.Signing;

namespace Rigging.Squawks.Tests;

/// <summary>An invented school with one aircraft: who is who, what tools there are, and a way to walk a squawk to any stage by real entries.</summary>
static class School
{
    public static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    public static readonly LocalDate Today = new(2026, 3, 2);
    public static readonly AircraftId Aircraft = new(Guid.Parse("00000000-0000-7000-8000-0000000000a1"));

    public static readonly Person Pilot = Someone(1, [Authority.Pilot], "private-pilot");
    public static readonly Person Student = Someone(2, [Authority.Pilot], "student-pilot");
    public static readonly Person Office = Someone(3, [Authority.Office]);
    public static readonly Person Mechanic = Someone(4, [Authority.Mechanic, Authority.Inspector, Authority.Certifier], "mechanic-airframe");
    public static readonly Person Inspector = Someone(5, [Authority.Inspector], "mechanic-airframe");
    public static readonly Person Certifier = Someone(6, [Authority.Certifier], "mechanic-airframe");

    public static readonly Tool Wrench = new(new(Guid.Parse("00000000-0000-7000-8000-0000000000b1")), "TW-3", "torque wrench 30 to 250 in·lb", Today.PlusDays(30), 50, 250, 10, ToolKind.TorqueWrench);
    public static readonly Tool WrenchADayOut = Wrench with { Id = new(Guid.Parse("00000000-0000-7000-8000-0000000000b2")), Code = "TW-4", CalibrationDue = Today.PlusDays(-1) };

    public static readonly Tool Tensiometer = new(new(Guid.Parse("00000000-0000-7000-8000-0000000000b3")), "TM-1", "cable tensiometer", Today.PlusDays(30), 45, 700, null, ToolKind.Tensiometer);
    public static readonly Tool Protractor = new(new(Guid.Parse("00000000-0000-7000-8000-0000000000b4")), "PR-1", "protractor", Today.PlusDays(30), 0, 90, null, ToolKind.Protractor) { Scale = new(MovementUnit.Degree, 0.5) };
    public static readonly Tool ProtractorADayOut = Protractor with { Id = new(Guid.Parse("00000000-0000-7000-8000-0000000000b5")), Code = "PR-2", CalibrationDue = Today.PlusDays(-1) };
    public static readonly Tool Dial = new(new(Guid.Parse("00000000-0000-7000-8000-0000000000b6")), "DI-1", "dial indicator", Today.PlusDays(30), 0, 10, null, ToolKind.DialIndicator) { Scale = new(MovementUnit.Millimetre, 0.01) };
    public static readonly Tool Level = new(new(Guid.Parse("00000000-0000-7000-8000-0000000000b7")), "INC-1", "digital inclinometer", Today.PlusDays(30), 0, 90, null, ToolKind.Inclinometer) { Scale = new(MovementUnit.Degree, 0.05) };

    public static IReadOnlyDictionary<ToolId, Tool> Tools { get; } =
        new[] { Wrench, WrenchADayOut, Tensiometer, Protractor, ProtractorADayOut, Dial, Level }.ToDictionary(tool => tool.Id);

    public static readonly ApprovedData Manual = new("Maintenance Manual (invented)", "57-10", "C");

    public static readonly AirframeOnFile Airframe =
        AirframeOnFile.Of("st2", 1, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "airframes", "st2.json")))!;

    public static Person Someone(int number, Authority[] authorities, params string[] certificates) =>
        new(new(Guid.Parse($"00000000-0000-7000-8000-{number:D12}")), authorities,
            [.. certificates.Select((kind, i) => new Certificate(new(Guid.Parse($"00000000-0000-7000-9000-{(number * 10) + i:D12}")), kind, null, Today.PlusDays(200)))]);

    public static Facts Facts(Person who, Affirmation? affirmation = null) => new(
        Noon, DateTimeZone.Utc, who, RuleSet.Shipped["united-states"],
        Tools,
        [], Airframe, new(1200, null), affirmation);

    /// <summary>Asks, and signs with a fresh password and the text as it stands where the kind of entry needs it.</summary>
    public static Decision Try(Ledger ledger, Person who, Fact fact, Func<Facts, Facts>? change = null)
    {
        var facts = Facts(who);
        facts = change?.Invoke(facts) ?? facts;
        if (MoveTable.MustBeSigned(fact, ledger.State) && facts.Affirmation is null)
        {
            var hash = SignedText.Sha256(Squawk.TextToSign(ledger, fact, facts));
            facts = facts with { Affirmation = new("password", facts.Now, hash, hash) };
        }
        return Squawk.Decide(ledger, fact, facts);
    }

    /// <summary>Work with the measurements that the rules ask for, as somebody reads them who moved it as it is written; what is there and proves its move stays.</summary>
    public static WorkDone Proved(this WorkDone done, Ledger ledger)
    {
        var facts = Facts(Mechanic);
        return done with
        {
            Movements =
            [
                .. from move in DirectionRules.ToProve(ledger.State).DistinctBy(move => move.Control)
                   let given = done.Movements?.FirstOrDefault(measured => measured.Control == move.Control)
                   select DirectionRules.Of(move, given, done, ledger.State, facts).Count == 0 ? given! : Read(move, done, ledger.State, facts),
            ],
        };
    }

    static MovementMeasured Read(PlannedMove move, WorkDone done, SquawkState state, Facts facts)
    {
        var edge = DirectionRules.Expected(move, done, state, facts);
        var aft = edge?.RearSparAft ?? UnitsNet.Length.FromMillimeters(400);
        var (down, up) = move.Control == Control.RudderTab ? (Seen.Left, Seen.Right) : (Seen.Down, Seen.Up);
        return new(move.Control, edge is { Way: < 0 } ? up : down, Math.Abs(edge?.At(aft)?.Millimeters ?? 2), MovementUnit.Millimetre, aft.Millimeters, Dial.Id);
    }

    public static Ledger Do(this Ledger ledger, Person who, Fact fact) => Try(ledger, who, fact is WorkDone done ? done.Proved(ledger) : fact) switch
    {
        Decision.Accepted accepted => ledger.With(accepted.Entry),
        Decision.Refused refused => throw new InvalidOperationException(
            $"{fact.GetType().Name} at {ledger.State.Stage}: {string.Join("; ", refused.Broken.Select(b => $"{b.Code}: {b.Sentence}"))}"),
        _ => throw new InvalidOperationException(),
    };

    public static Ledger Empty => Ledger.Empty(new(Guid.Parse("00000000-0000-7000-8000-00000000c0de")));

    public static Ledger Reported => Empty.Do(Pilot, Report);

    public static Ledger Called => Reported.Do(Mechanic, new Called(Call.NoRiggingHold, "Flies straight enough to gather readings.", null));

    public static Ledger Checked => Checks.Aggregate(Called, (ledger, check) => ledger.Do(Mechanic, check));

    public static Ledger Agreed => Checked.Do(Mechanic, HalfAFlat);

    public static Ledger InWork => Agreed.Do(Mechanic, new WorkStarted("Padded stand under the strut fitting, manual 57-10.", null));

    /// <summary>A picture that the tests' schools keep.</summary>
    public static byte[] Picture => "An invented picture."u8.ToArray();

    public static string PictureHash { get; } = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Picture));

    /// <summary>The bolt is torqued, and nothing that the move changed has been measured again.</summary>
    public static Ledger JustTorqued => InWork.Do(Mechanic, Found).Do(Mechanic, Torque);

    public static Ledger Torqued => JustTorqued.MeasuredAgain();

    /// <summary>What the move asks to be measured again is, by the mechanic.</summary>
    /// <param name="then">Entered late; null for now.</param>
    public static Ledger MeasuredAgain(this Ledger ledger, Instant? then = null) =>
        RecheckRules.Asked(ledger.State, Airframe).Where(recheck => !recheck.IsDone).Aggregate(ledger, (sofar, recheck) => sofar.Do(Mechanic, Again(recheck) with { HappenedAt = then }));

    /// <summary>An entry as it stands in ledgers from before today's rules.</summary>
    public static Ledger Once(this Ledger ledger, Fact fact) => ledger.With(new(ledger.Length + 1, Noon, Mechanic.Id, Authority.Mechanic, fact, null));

    public static GroundChecked Again(Recheck recheck) => recheck.Check switch
    {
        Check.CableTension => Tension(recheck.Part ?? "left aileron", 160),
        Check.ControlTravel => Travel(recheck.Part!.Contains("Left", StringComparison.Ordinal) ? Side.Left : Side.Right, 20, 15),
        var check => Measured(check, 0.1),
    };

    public static GroundChecked Tension(string cable, double newtons, double degC = 18) =>
        Measured(Check.CableTension, newtons) with { Cable = cable, TemperatureC = degC, Tool = Tensiometer.Id, Finding = "Manual 27-10: 150 to 190 N." };

    public static GroundChecked Travel(Side aileron, double up, double down) => Measured(Check.ControlTravel, null) with
    {
        Travel = new(Mechanics.Contract.ControlSurface.Ailerons, aileron, up, down),
        Tool = Protractor.Id,
        Finding = "Manual 27-10: 20° up, 15° down.",
    };

    /// <summary>Work that was done some days ago and is entered now: every entry says so.</summary>
    public static Ledger TorquedDaysAgo(int days)
    {
        var then = Noon - Duration.FromDays(days);
        return Agreed.Do(Mechanic, new WorkStarted("Padded stand under the strut fitting, manual 57-10.", null, then))
            .Do(Mechanic, Found with { HappenedAt = then }).Do(Mechanic, Torque with { HappenedAt = then }).MeasuredAgain(then);
    }

    public static Ledger Worked => Torqued.Do(Mechanic, Done);

    /// <summary>The surfaces that these controls are part of.</summary>
    public static IReadOnlyList<ControlSurface> MovedBy(params IEnumerable<Control> controls) => [.. controls.Select(ControlSense.MovedBy).OfType<ControlSurface>().Distinct()];

    /// <summary>One counted control moved, and no eccentric touched.</summary>
    public static Ledger Turned(Control control, double from, double to) => Checked
        .Do(Mechanic, HalfAFlat with { Moves = [new(control, null, null, $"{Words.Capital(Words.Of(control))} as agreed.", from, to)] })
        .Do(Mechanic, new WorkStarted("Padded stand under the wing.", null))
        .Do(Mechanic, new AsFound(new(null, null, null, null), "Lock wire in place.", Adjusters: [new(control, from)]))
        .Do(Mechanic, Torque)
        .MeasuredAgain()
        .Do(Mechanic, Done with { Description = "Turned as agreed.", AsLeft = new(null, null, null, null), OtherAsLeft = "Lock wire renewed.", AdjustersAsLeft = [new(control, to)], Disturbed = [Words.Of(control)], Surfaces = MovedBy(control) });

    public static Ledger Inspected => Worked.Do(Inspector, Inspection);

    public static Ledger Approved => Inspected.Do(Certifier, Approval);

    public static Ledger Flown => Approved.Do(Pilot, Flight);

    public static Ledger Judged => Flown.Do(Mechanic, Verdict(VerdictWord.Accepted));

    public static Ledger Closed => Judged.Do(Inspector, new Closed("The fuller right tank explains what is left."));

    public static Ledger At(Stage stage) => stage switch
    {
        Stage.Reported => Reported,
        Stage.Called => Called,
        Stage.InChecks => Checked,
        Stage.CorrectionAgreed => Agreed,
        Stage.InWork => Torqued,
        Stage.AwaitingInspection => Worked,
        Stage.AwaitingApproval => Inspected,
        Stage.ApprovedPassengersBarred => Approved,
        Stage.CheckFlightLogged => Judged,
        Stage.Closed => Closed,
        Stage.NoFaultFound => Called.Do(Inspector, new NoFaultFound("Flown and surveyed; nothing found.", true)),
        Stage.WithinLimitsMonitored => Flown.Do(Inspector, new WithinLimits("0.3 °/s at 95 kt.", "School limit 0.5 °/s.", true)),
        Stage.Joined => Joined,
        Stage.HandedOver => Called.Do(Mechanic, new HandedOver("avionics shop", "The turn indicator was at fault.")),
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };

    public static readonly SquawkId Other = new(Guid.Parse("00000000-0000-7000-8000-0000000000d2"));

    static Ledger Joined
    {
        get
        {
            var decision = Try(Called, Mechanic, Join, facts => facts with { OtherSquawks = [new(Other, 7, FlightStatus.MayFly)] });
            return Called.With(Assert.IsType<Decision.Accepted>(decision).Entry);
        }
    }

    public static readonly JoinedTo Join = new(Other, 7, "Same complaint from another pilot.");

    public static readonly Reported Report = new(1, Aircraft, "Rolls left by itself.", Side.Left, RollStrength.Slowly, Hands.Released, Feet.BallCentred,
        95, 3000, 65, 0, 0, -6, 10, 25, 25, FuelMethod.Dip, 77, 77, "about two weeks", "painted, no wing off", true, [Happening.Repaint], []);

    public static readonly GroundChecked[] Checks =
    [
        Measured(Check.FuelAndSeats, null) with { Fuel = [new("left", 25), new("right", 25)], Finding = "Dipped; one person each seat." },
        Measured(Check.BallOffset, 0),
        Measured(Check.DamageInspection, null) with { Clear = true, Finding = "Attach fittings, struts, skins: no damage." },
        Measured(Check.FlapDifference, 0.1),
        Measured(Check.AileronNeutralOffset, 0),
        Tension("left aileron", 160),
        Measured(Check.RudderTab, 0),
    ];

    public static GroundChecked Measured(Check check, double? value) => new(check, value, null, null, null, null, null, null, null, null, null, null);

    /// <summary>The airframe on file with something more on it.</summary>
    public static AirframeOnFile AirframeWith(string field, string json, string bracing = "single-strut-at-front-spar")
    {
        var airframe = JsonNode.Parse(Airframe.Json)!.AsObject();
        airframe[field] = JsonNode.Parse(json);
        airframe["wing"]!["bracing"] = bracing;
        return AirframeOnFile.Of("st2", 2, airframe.ToJsonString())!;
    }

    public static AirframeOnFile Rodded =>
        AirframeWith("flapRod", """{ "mmPerTurn": 1.27, "hornArmMm": 75, "lengtheningLowers": true, "leastTurns": -5, "greatestTurns": 5, "stepTurns": 0.5, "source": "invented" }""");

    public static readonly CorrectionAgreed HalfAFlat = new(
        [new PlannedMove(Control.LeftEccentric, -15, 15, "Left wing: trailing edge down, half a flat, −15° to 15°.")],
        Manual, false, "Panel incidence singled out.", -0.1, -0.4, 0.2);

    public static readonly AsFound Found = new(new BushingAngles(-15, -15, 0, 0), null);

    public static readonly TorqueApplied Torque = new("left rear spar attach bolt 3/8-24", "Manual 57-10", 160, 190, false, Lubrication.Dry, TurnedPart.Nut,
        15, 175, 205, Wrench.Id, null, null, 10, 0, 0, 190, 190, true, Nut: NutKind.SelfLocking, FigureFor: TurnedPart.Nut);

    /// <summary>Half a flat about neutral with a throw of 1.8 mm: 2 · 1.8 · sin 15°.</summary>
    public static MovementMeasured SeenDown => new(Control.LeftEccentric, Seen.Down, 0.93, MovementUnit.Millimetre, null, Dial.Id);

    public static readonly WorkDone Done = new("Left eccentric turned half a flat, trailing edge down.", new BushingAngles(15, 15, 0, 0), null,
        "Dial indicator at the root trailing edge: 0.9 mm down.", ["left rear spar attachment", "left aileron cables"],
        [new PartUsed("self-locking nut 3/8-24", "invented-1", 1)], [new DependentReset("left aileron cable tension", "36 lb at 18 °C")],
        true, true, true, null, 2.5, 1234.5, Today, Surfaces: [ControlSurface.Ailerons, ControlSurface.Flaps], Movements: [SeenDown]);

    public static readonly Inspected Inspection = new(true,
        [.. ControlSense.AskFor(Done, null).Select(o => o with { Seen = o.Expected })], true, true, true, null, "Fitting, stripe, cables, travel seen.");

    public static readonly Approved Approval = new("", Today, 0, true, null);

    public static readonly CheckFlown Flight = new(Today, 0.8, 0, 0, "times and writes down the readings", true, true, true, "[]", true, null, true, null, true, "Very slightly right.");

    public static VerdictGiven Verdict(VerdictWord word) => new(word, 0.1, 0.1, "The fuller right tank explains it.", "{}", "{}", "0.1");
}
