using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Cause = Rigging.Mechanics.Contract.Cause;
using Manoeuvre = Rigging.Mechanics.Contract.Manoeuvre;
using ReadingMethod = Rigging.Mechanics.Contract.ReadingMethod;

namespace Rigging.Squawks.Rules;

/// <summary>The trade's words for the values in a ledger: one place, so that screen, paper and refusals agree.</summary>
public static class Words
{
    public static string Of(Stage stage) => stage switch
    {
        Stage.Reported => "reported, held for a call",
        Stage.Called => "called",
        Stage.InChecks => "in checks",
        Stage.CorrectionAgreed => "correction agreed",
        Stage.InWork => "in work",
        Stage.AwaitingInspection => "awaiting inspection",
        Stage.AwaitingApproval => "awaiting approval",
        Stage.ApprovedPassengersBarred => "approved, passengers barred",
        Stage.CheckFlightLogged => "check flight logged",
        Stage.Closed => "closed",
        Stage.NoFaultFound => "no fault found",
        Stage.WithinLimitsMonitored => "within limits, monitored",
        Stage.Joined => "joined to another squawk",
        Stage.HandedOver => "handed over",
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };

    public static string Of(FlightStatus status) => status switch
    {
        FlightStatus.MayFly => "no rigging hold",
        FlightStatus.Limits => "may fly with limits",
        FlightStatus.CrewOnly => "crew only",
        FlightStatus.Held => "held",
        FlightStatus.Grounded => "grounded",
        _ => throw new ArgumentOutOfRangeException(nameof(status)),
    };

    public static string Of(Authority authority) => authority switch
    {
        Authority.Pilot => "pilot",
        Authority.Office => "maintenance office",
        Authority.Mechanic => "mechanic",
        Authority.Inspector => "inspector",
        Authority.Certifier => "certifier",
        Authority.Reporter => "reporter, identity unconfirmed",
        _ => throw new ArgumentOutOfRangeException(nameof(authority)),
    };

    public static string Of(ControlSurface surface) => surface switch
    {
        ControlSurface.Elevator => "elevator or stabilator",
        _ => surface.ToString().ToLowerInvariant(),
    };

    /// <summary>What work disturbed, as one list: in the mechanic's words, then the surfaces that were asked about by name.</summary>
    public static string Disturbed(WorkDone work) => string.Join("; ",
    [
        .. work.Disturbed,
        .. work.Surfaces is not { } surfaces ? [] : (string[])[$"control surfaces: {(surfaces.Count == 0 ? "none" : string.Join(", ", surfaces.Select(Of)))}"],
    ]);

    public static string Of(VerdictWord verdict) => verdict switch
    {
        VerdictWord.Accepted => "accepted",
        VerdictWord.AdjustAgain => "adjust again",
        VerdictWord.NotEnoughEvidence => "not enough evidence",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
    };

    public static string Of(WaitingFor waiting) => waiting switch
    {
        WaitingFor.OutsideShop => "an outside shop",
        _ => waiting.ToString().ToLowerInvariant(),
    };

    public static string Of(Call call) => call switch
    {
        Call.Grounded => "grounded",
        Call.MayFlyWithLimits => "may fly with limits",
        Call.NoRiggingHold => "no rigging hold",
        _ => throw new ArgumentOutOfRangeException(nameof(call)),
    };

    public static string Of(Prerequisite prerequisite) => prerequisite switch
    {
        Prerequisite.FuelAndSeats => "fuel and seats",
        _ => prerequisite.ToString().ToLowerInvariant(),
    };

    public static string Of(Check check) => check switch
    {
        Check.FuelAndSeats => "fuel and seats measured",
        Check.BallOffset => "ball against the airframe",
        Check.DamageInspection => "damage inspection",
        Check.FlapDifference => "flaps at the up stop, right minus left",
        Check.AileronNeutralOffset => "aileron neutral offset",
        Check.AileronFloat => "aileron float",
        Check.AileronTab => "aileron tab",
        Check.CableTension => "cable tension",
        Check.ControlFriction => "control friction",
        Check.RudderTab => "rudder and its tab",
        Check.ContourSurvey => "contour and fairing survey",
        Check.PanelIncidenceDifference => "panel incidence, right minus left",
        Check.TipIncidenceDifference => "tip incidence, right minus left",
        Check.ControlTravel => "control travel",
        _ => throw new ArgumentOutOfRangeException(nameof(check)),
    };

    public static string Of(ToolKind kind) => kind switch
    {
        ToolKind.TorqueWrench => "torque wrench",
        ToolKind.Tensiometer => "tensiometer",
        ToolKind.Inclinometer => "inclinometer",
        ToolKind.Protractor => "protractor",
        ToolKind.DialIndicator => "dial indicator",
        ToolKind.SpringScale => "spring scale",
        ToolKind.Other => "tool of another kind",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    public static string Of(NutKind nut) => nut == NutKind.SelfLocking ? "self-locking nut" : "castle or plain nut";

    /// <summary>Which surface a travel is of, such as "left aileron".</summary>
    public static string Surface(TravelMeasured travel) =>
        $"{(travel.Side is { } side ? Of(side) + " " : "")}{Mechanics.Contract.Wire.Word(travel.Surface).TrimEnd('s')}";

    /// <summary>Such as "left aileron 20.4° up, 15.1° down"; of a rudder, left and right.</summary>
    public static string Travel(TravelMeasured travel) => travel.Surface == Mechanics.Contract.ControlSurface.Rudder
        ? $"{Surface(travel)} {Number(travel.UpDeg, 1)}° left, {Number(travel.DownDeg, 1)}° right"
        : $"{Surface(travel)} {Number(travel.UpDeg, 1)}° up, {Number(travel.DownDeg, 1)}° down";

    /// <summary>What was measured again after a move, with what, and what is allowed: on paper and above a signature alike.</summary>
    public static string MeasuredAgain(GroundChecked check)
    {
        var what = check switch
        {
            { Travel: { } travel } => Travel(travel),
            { Check: Check.CableTension, Value: { } newtons, TemperatureC: { } degC } => $"{check.Cable} {Number(newtons, 0)} N at {Number(degC, 0)} °C",
            { Value: { } value } => $"{Of(check.Check)} {Number(value)} {CheckUnits.Of(check.Check)}",
            _ => Of(check.Check),
        };
        string[] told =
        [
            check.ToolCode is { } tool ? $"{what}, with {tool}." : $"{what}.",
            .. (check.Limits ?? []).Select(limit => Capital(Against(limit))),
            check.NoLimitsBecause is null ? "" : $"Not compared with the file. {check.Finding}",
        ];
        return string.Join(' ', told.Where(part => part != ""));
    }

    /// <summary>What was measured against its limit, and what the limit is.</summary>
    public static string Against(AgainstLimit limit)
    {
        var gap = limit.Unit == "°" ? "" : "\u00a0";
        string Amount(double value) => $"{Number(value, 1)}{gap}{limit.Unit}";
        var how = limit.IsWithin() ? "within" : limit.Measured < limit.Least ? "below" : "above";
        return $"{limit.What}: {Amount(limit.Measured)}, {how} {Amount(limit.Least)} to {Amount(limit.Greatest)} ({limit.Source}{(limit.Estimated ? "; limits carried to this temperature, an estimate" : "")}).";
    }

    public static string Of(RedFlag flag) => flag switch
    {
        RedFlag.SuddenOnset => "it came on suddenly",
        RedFlag.Bang => "a bang",
        RedFlag.FullOrNearlyFullControl => "full or nearly full control needed",
        RedFlag.BothHands => "both hands needed",
        RedFlag.StuckOrSplitFlap => "a stuck or split flap",
        RedFlag.FirstFlightAfterAssembly => "first flight after assembly",
        RedFlag.UnexplainedRecurrence => "it came back, unexplained",
        RedFlag.Damage => "damage seen",
        RedFlag.ControlJammed => "a control that is stuck, stiff, or moves the wrong way",
        _ => throw new ArgumentOutOfRangeException(nameof(flag)),
    };

    public const string WrongWay = "a control was seen to move the wrong way", WorseThanBefore = "it is worse than before the work";

    public static string Of(Tried tried) => tried switch
    {
        Tried.Incidence => "incidence of a wing, by its eccentric",
        Tried.Flaps => "rigging of the flaps",
        Tried.Ailerons => "rigging of the ailerons",
        Tried.AileronTab => "aileron tab or trailing edge",
        Tried.RudderTab => "rudder tab or trim",
        _ => throw new ArgumentOutOfRangeException(nameof(tried), tried, "no words"),
    };

    public static string Of(Happening happening) => happening switch
    {
        Happening.HardLanding => "a hard landing",
        Happening.GroundStrike => "a ground strike",
        Happening.WingRemoved => "a wing was removed and refitted",
        Happening.WingReplaced => "a wing was replaced",
        Happening.Repaint => "it was painted",
        Happening.ControlReplaced => "a control surface was replaced",
        Happening.CablesAdjusted => "cables were adjusted",
        Happening.FlapOverspeed => "flaps were down too fast",
        Happening.StormParking => "it stood outside in a storm",
        Happening.Repair => "it was repaired",
        _ => throw new ArgumentOutOfRangeException(nameof(happening)),
    };

    public static string Of(Control control) => control switch
    {
        Control.LeftEccentric => "left wing eccentric",
        Control.RightEccentric => "right wing eccentric",
        Control.LeftStrutFork or Control.RightStrutFork => control.OnFile().InWords(),
        Control.LeftFlapRod => "left flap rod",
        Control.RightFlapRod => "right flap rod",
        Control.AileronNeutral => "aileron neutral",
        Control.AileronTab => "aileron tab",
        Control.RudderTab => "rudder tab",
        Control.CableTension => "cable tension",
        Control.RepairOrReplace => "repair or replace to data",
        _ => throw new ArgumentOutOfRangeException(nameof(control)),
    };

    /// <summary>How an adjuster stands, ways in words and no sign.</summary>
    public static string Setting(AdjusterSetting setting) => $"{Of(setting.Control)} {Stands(setting.Control, setting.Value)}";

    /// <summary>The same without its name; an eccentric too.</summary>
    public static string Stands(Control control, double value)
    {
        var (size, turns) = (Number(Math.Abs(value)), Math.Abs(value) == 1 ? "turn" : "turns");
        return control switch
        {
            Control.LeftEccentric or Control.RightEccentric => Directions.TrailingEdge(value),
            Control.AileronTab or Control.RudderTab when value == 0 => "straight",
            Control.AileronTab => $"{size}° trailing edge {(value > 0 ? "down" : "up")}",
            Control.RudderTab => $"{size}° trailing edge {(value > 0 ? "left" : "right")}",
            Control.LeftFlapRod or Control.RightFlapRod when value == 0 => "at the length of the drawing",
            Control.LeftFlapRod or Control.RightFlapRod => $"{size} {turns} {(value > 0 ? "out from" : "in from")} the length of the drawing",
            _ => $"{Number(value)} {turns} out from fully in",
        };
    }

    public static string Of(MovementUnit unit) => unit switch
    {
        MovementUnit.Millimetre => "millimetres",
        MovementUnit.Inch => "inches",
        MovementUnit.Degree => "degrees",
        _ => throw new ArgumentOutOfRangeException(nameof(unit)),
    };

    /// <summary>The measurement that proves a direction: "right rear strut fork: rear spar 2.7 mm down, with DI-1 … ; 2.77 mm was to be expected, give or take 0.46 mm."</summary>
    public static string Movement(MovementMeasured measured)
    {
        string Read(double amount) => DirectionRules.Read(amount, measured.Unit);
        var place = measured switch
        {
            { Unit: MovementUnit.Degree } => measured.Control.MovesIncidence() ? "wing turned, trailing edge" : DirectionRules.EdgeOf(measured.Control),
            { Aft: { } aft } => $"{DirectionRules.EdgeOf(measured.Control)}, {Read(aft)} behind the {DirectionRules.PivotOf(measured.Control)},",
            _ => "rear spar",
        };
        return string.Concat((string?[])
        [
            $"{Of(measured.Control)}: {place} {Read(measured.Amount)} {Of(measured.Way)}",
            measured.ToolCode is { } tool ? $", with {tool}" : null,
            measured.ToolStep is { } step ? $" (steps of {Read(step)}, calibration due {measured.CalibrationDue:uuuu-MM-dd})" : null,
            measured is { Expected: { } expected, GiveOrTake: { } within } ? $"; {Read(expected)} was to be expected, give or take {Read(within)}" : "; how far was to be expected is not on file",
            ".",
            string.IsNullOrWhiteSpace(measured.OtherwiseBecause) ? null : $" Otherwise because: {measured.OtherwiseBecause}",
        ]);
    }

    public static string Of(RollTrim trim) => trim switch
    {
        RollTrim.Neutral => "neutral",
        RollTrim.LeftWingDown => "off neutral, left wing down",
        RollTrim.RightWingDown => "off neutral, right wing down",
        RollTrim.NotFitted => "not fitted",
        _ => throw new ArgumentOutOfRangeException(nameof(trim)),
    };

    public static string Of(YawTrim trim) => trim switch
    {
        YawTrim.Neutral => "neutral",
        YawTrim.NoseLeft => "off neutral, nose left",
        YawTrim.NoseRight => "off neutral, nose right",
        YawTrim.NotFitted => "not fitted",
        _ => throw new ArgumentOutOfRangeException(nameof(trim)),
    };

    public static string Of(FlownAutopilot autopilot) => autopilot switch
    {
        FlownAutopilot.NotFitted => "not fitted",
        _ => autopilot.ToString().ToLowerInvariant(),
    };

    /// <summary>What of it is on record.</summary>
    public static string Trims(TrimsFlown trims) => string.Join("; ", ((string?[])
    [
        trims.Roll is { } roll ? $"roll trim {Of(roll)}" : null,
        trims.Yaw is { } yaw ? $"yaw trim {Of(yaw)}" : null,
        trims.Autopilot is { } autopilot ? $"autopilot {Of(autopilot)}" : null,
    ]).OfType<string>());

    public static string Of(Seen seen) => seen switch
    {
        Seen.NotRecorded => "not recorded",
        Seen.Up => "up",
        Seen.Down => "down",
        Seen.Left => "left",
        Seen.Right => "right",
        Seen.Still => "not at all",
        _ => throw new ArgumentOutOfRangeException(nameof(seen)),
    };

    public static string Of(Side side) => side switch
    {
        Side.NotRecorded => "side not recorded",
        Side.Left => "left",
        Side.Right => "right",
        Side.None => "neither side",
        _ => throw new ArgumentOutOfRangeException(nameof(side)),
    };

    public static string Of(RollStrength strength) => strength switch
    {
        RollStrength.NotRecorded => "not recorded how fast",
        RollStrength.Barely => "barely",
        RollStrength.Slowly => "slowly",
        RollStrength.Briskly => "briskly",
        _ => throw new ArgumentOutOfRangeException(nameof(strength)),
    };

    public static string Of(Hands hands) => hands switch
    {
        Hands.NotRecorded => "hands not recorded",
        Hands.Released => "hands off",
        Hands.HeldNeutral => "wheel held at neutral",
        Hands.HoldingLevel => "held level by hand",
        _ => throw new ArgumentOutOfRangeException(nameof(hands)),
    };

    public static string Of(Feet feet) => feet switch
    {
        Feet.NotRecorded => "feet not recorded",
        Feet.Off => "feet off",
        Feet.BallCentred => "feet keeping the ball centred",
        Feet.OnPedals => "feet on the pedals",
        _ => throw new ArgumentOutOfRangeException(nameof(feet)),
    };

    public static string Of(FuelMethod method) => method switch
    {
        FuelMethod.NotKnown => "not known",
        FuelMethod.Gauge => "read off the gauges",
        FuelMethod.Dip => "dipped",
        FuelMethod.Totaliser => "by the totaliser",
        _ => throw new ArgumentOutOfRangeException(nameof(method)),
    };

    public static string Of(Aboard aboard) => aboard switch
    {
        Aboard.AloneLeft => "alone in the left seat",
        Aboard.AloneRight => "alone in the right seat",
        Aboard.TwoUp => "two in front",
        Aboard.MoreThanTwo => "two in front and more behind",
        _ => throw new ArgumentOutOfRangeException(nameof(aboard)),
    };

    public static string Of(Lubrication lubrication) => lubrication switch
    {
        Lubrication.Dry => "dry",
        Lubrication.Lubricated => "lubricated",
        _ => throw new ArgumentOutOfRangeException(nameof(lubrication)),
    };

    /// <summary>The part itself.</summary>
    public static string Part(TurnedPart turned) => turned == TurnedPart.Nut ? "nut" : "bolt head";

    public static string Of(TurnedPart turned) => turned switch
    {
        TurnedPart.Nut => "nut turned",
        TurnedPart.BoltHead => "bolt head turned",
        _ => throw new ArgumentOutOfRangeException(nameof(turned)),
    };

    public static string Of(Cause cause) => cause switch
    {
        Cause.FuelAndLoading => "fuel and loading",
        Cause.PanelIncidenceDifference => "panel incidence",
        Cause.TipIncidenceDifference => "tip incidence",
        Cause.FlapDifference => "flap difference",
        Cause.ContourOrFairing => "contour or fairing",
        Cause.AileronFloat => "aileron float",
        Cause.AileronNeutralOffset => "aileron neutral offset",
        Cause.RudderOrFinOffset => "rudder or fin offset",
        Cause.Slipstream => "slipstream",
        Cause.ControlFriction => "control friction",
        Cause.InstrumentMisalignment => "ball or horizon out of true",
        Cause.DamageOrMisassembly => "damage or misassembly",
        _ => throw new ArgumentOutOfRangeException(nameof(cause)),
    };

    public static string Of(Original original) => original switch
    {
        Original.ThePaper => "the paper is the original, and this ledger has a copy",
        Original.ThisLedger => "this ledger is the original, and the paper is a copy",
        _ => throw new ArgumentOutOfRangeException(nameof(original)),
    };

    public static string Of(PhotoOf of) => of switch
    {
        PhotoOf.BeforeWork => "before the work",
        PhotoOf.AfterWork => "after the work",
        PhotoOf.SomethingFound => "something found",
        PhotoOf.SignedPaper => "an entry signed on paper",
        _ => throw new ArgumentOutOfRangeException(nameof(of)),
    };

    public static string Of(Manoeuvre manoeuvre) => manoeuvre switch
    {
        Manoeuvre.ReleaseAll => "everything let go",
        Manoeuvre.ReleaseWheel => "wheel let go, feet keeping the ball centred",
        Manoeuvre.HoldNeutral => "wheel held at neutral, feet keeping the ball centred",
        Manoeuvre.HoldLevel => "wings held level with the wheel, feet off",
        Manoeuvre.HoldStraight => "wings level and ball centred, both held",
        Manoeuvre.BalanceFuel => "fuel burnt off one side until it flies level",
        _ => throw new ArgumentOutOfRangeException(nameof(manoeuvre)),
    };

    public static string Of(ReadingMethod method) => method switch
    {
        ReadingMethod.StopwatchHorizon => "stopwatch and horizon",
        ReadingMethod.StopwatchCompass => "stopwatch and compass",
        ReadingMethod.Eye => "by eye",
        ReadingMethod.Instrument => "instrument",
        ReadingMethod.FlightLog => "flight log",
        _ => throw new ArgumentOutOfRangeException(nameof(method)),
    };

    /// <summary>The same words at the head of a sentence.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    public static string Any(IEnumerable<Authority> authorities) => string.Join(" or ", authorities.Select(Of));

    public static string List(IReadOnlyList<Authority> authorities) => authorities.Count == 0 ? "nobody" : string.Join(", ", authorities.Select(Of));

    /// <summary>A number for people: proper minus, at most so many decimals, no trailing zeros.</summary>
    public static string Number(double value, int decimals = 2) =>
        // Adding 0 turns a rounded −0 into 0.
        (Math.Round(value, decimals) + 0.0).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture).Replace('-', '−');

    /// <summary>A size as far as there can be such, and beyond that no number of its own.</summary>
    public static string AtMost(double size, double most, int decimals = 2) => size <= most ? Number(size, decimals) : $"more than {Number(most, decimals)}";

    /// <summary>A probability for people, never certain.</summary>
    public static string Percent(double probability) => $"{Number(Sureness.Percent(probability), 0)}{Directions.Space}%";

    public static string Degrees(double? value) => value is { } degrees ? $"{Number(degrees, 1)}°" : "not recorded";
}
