using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;
using Check = Rigging.Squawks.Entries.Check;
using Move = Rigging.Mechanics.Contract.Move;
using Control = Rigging.Squawks.Entries.Control;

namespace Rigging.Web.Assessment;

/// <summary>An assessment's numbers as people say them: sides in words, nine chances in ten as an interval.</summary>
static class AssessmentWords
{
    /// <summary>What the aeroplane does, in one sentence, and no more of it than is known.</summary>
    /// <param name="limitDegPerS">Null where none is on file.</param>
    /// <param name="ofYaw">The complaint is that it turns: no roll is no answer to that.</param>
    public static string Tendency(Estimate? tendency, ReferencePoint reference, double? limitDegPerS = null, bool ofYaw = false)
    {
        if (tendency is null) return Say.NothingOnRecordSaysHow;
        var known = tendency.OfRoll(limitDegPerS);
        var said = known switch
        {
            Known.Negative => Say.LeftWingHeavy,
            Known.Positive => Say.RightWingHeavy,
            Known.Nothing => ofYaw ? Say.NoRollComplaintIsOfYaw : Say.FliesLevel,
            Known.InsideLimit => ofYaw ? Say.InsideRollLimitComplaintIsOfYaw : Say.InsideLimitEitherWay,
            _ => Say.NotKnownWhichWay,
        };
        return Gaps.Fill(Say.WithHandsOffAndBallCentred, said, known.HasSide() ? Expected(tendency.Mean, tendency.Low, tendency.High) : Range(tendency.Low, tendency.High, RollRate),
            Words.Number(reference.CasKt, 0), Words.Number(reference.PressureAltitudeFt, 0), Directions.Load(reference.Load));
    }

    /// <summary>A complaint about turning or the ball, with no wing said to be heavy.</summary>
    public static bool IsOfYaw(Reported report) =>
        report.RollsTo is not (Squawks.Entries.Side.Left or Squawks.Entries.Side.Right) && report.BallWidths is { } ball && ball != 0;

    /// <summary>Where the ball lies feet off, for a complaint of yaw; null where nothing is expected of it.</summary>
    public static string? Yaw(Estimate? ball) => ball is null ? null : Gaps.Fill(Say.BallFeetOffWingsHeldLevel, Expected(ball.Mean, ball.Low, ball.High, Ball));

    /// <summary>How large a cause is, if it is there, as far as is known.</summary>
    public static string Size(Cause cause, Estimate amplitude, Equivalents coins) =>
        WhatIsKnown.Of(amplitude.Low, amplitude.High) == Known.NotWhichWay ? Say.NotKnownWhichWay : Amplitude(cause, amplitude.Mean, coins);

    public static string Between(Estimate estimate, Func<double, string> words) => Gaps.Fill(Say.NineTimesInTenBetween, words(estimate.Low), words(estimate.High));

    /// <summary>How large a cause is, if it is there.</summary>
    public static string Amplitude(Cause cause, double value, Equivalents coins) => cause switch
    {
        Cause.FuelAndLoading => coins.UnreportedFuel(value),
        Cause.PanelIncidenceDifference => Difference(value, "panel", "more incidence"),
        Cause.TipIncidenceDifference => Difference(value, "tip", "more incidence"),
        Cause.FlapDifference => Difference(value, "flap", "lower"),
        Cause.AileronFloat or Cause.AileronNeutralOffset => Sized(value, Say.TowardLeftWingDown, Say.TowardRightWingDown, Say.InLine),
        Cause.RudderOrFinOffset => Sized(value, Say.OfRudderTrailingEdgeRight, Say.OfRudderTrailingEdgeLeft, Say.InLine),
        Cause.InstrumentMisalignment => Gaps.Fill(Say.BallInTrueBalance, Ball(value)),
        Cause.ContourOrFairing or Cause.DamageOrMisassembly => Gaps.Fill(Say.MomentWorth, RollRate(coins.OfMoment(value))),
        Cause.ControlFriction => Gaps.Fill(Say.NAtWheelRim, Words.AtMost(value, ReadingLimits.GroundForceN, 1)),
        Cause.Slipstream => Gaps.Fill(value < 0 ? Say.OfUsualSlipstreamLess : Say.OfUsualSlipstreamMore, Words.Number(Math.Abs(value))),
        _ => throw new ArgumentOutOfRangeException(nameof(cause)),
    };

    static string Sized(double value, string left, string right, string none) =>
        Math.Round(Math.Abs(value), 2) == 0 ? none : $"{Words.AtMost(Math.Abs(value), ReadingLimits.GroundDeg)}{(value < 0 ? left : right)}";

    /// <summary>How much a test is expected to tell. One bit answers a question with even odds; where much begins and little ends is ours.</summary>
    public static string Tells(double bits) => bits >= 0.5 ? Say.TellsMuch : bits >= 0.15 ? Say.TellsSomething : Say.TellsLittle;

    /// <summary>A test's name as it comes from the mechanics, in the trade's words.</summary>
    public static string Test(string test)
    {
        var parts = test.Split(':', '@');
        return parts switch
        {
            ["ground-check", var check, ..] => Enum.GetValues<Check>().Where(known => Wire.Word(known) == check).Select(known => Gaps.Fill(Say.OnGround, Words.Of(known))).FirstOrDefault() ?? Plain(test),
            ["test-point", var manoeuvre, var where, ..] when Wire.TryRead<Manoeuvre>(manoeuvre, out var known) => Gaps.Fill(Say.InAirAt, string.Join(", ", where.Split(',').Select(Condition)), Words.Of(known)),
            ["measure", var what, ..] => Gaps.Fill(Say.Measure, Plain(what)),
            _ => Plain(test),
        };
    }

    /// <summary>One condition of a test point: <c>95kt</c>, <c>flap10</c>, <c>power90</c>.</summary>
    static string Condition(string word) => word switch
    {
        "last-input-left-and-right" => Say.TwiceWheelLastMoved,
        _ when word.EndsWith("kt", StringComparison.Ordinal) => $"{word[..^2]}{Space}kt",
        _ when word.StartsWith("flap", StringComparison.Ordinal) => Gaps.Fill(Say.Flap, word["flap".Length..]),
        _ when word.StartsWith("power", StringComparison.Ordinal) => Gaps.Fill(Say.Power, word["power".Length..]),
        _ => Plain(word),
    };

    static string Plain(string word) => word.Replace('-', ' ').Replace(":", ": ", StringComparison.Ordinal);

    /// <summary>A sentence of the mechanics with the catalogue's words in place of its codes.</summary>
    public static string Sentence(string sentence) => Codes.Aggregate(sentence, (text, code) => text.Replace(code.Code, code.Words, StringComparison.Ordinal));

    static readonly (string Code, string Words)[] Codes =
    [
        .. Enum.GetValues<Cause>().Select(cause => (Wire.Word(cause), Words.Of(cause))),
        .. Enum.GetValues<Check>().Select(check => (Wire.Word(check), Words.Of(check))),
    ];

    /// <summary>One move as the mechanic reads it.</summary>
    public static string Instruction(Move move) => move.Control switch
    {
        AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric => TurnOfEccentric(move),
        AdjustableControl.AileronNeutral => Gaps.Fill(Say.AileronsToNeutral, Directions.Bank(move.FromDeg ?? 0)),
        _ when (move.FromDeg ?? move.FromTurns, move.ToDeg ?? move.ToTurns) is ({ } from, { } to) => $"{NowThen(ControlOf(move), from, to)}{Edge(move, ControlOf(move))}",
        _ => Words.Capital(Words.Of(ControlOf(move))),
    };

    /// <summary>How far, from where, and to where: of a move that somebody planned in numbers.</summary>
    public static string NowThen(Control control, double from, double to) => control.IsEccentric()
        ? Gaps.Fill(Say.EccentricNowThen, Words.Capital(Words.Of(control)), Words.Stands(control, from), Words.Stands(control, to))
        : Gaps.Fill(Say.AdjusterNowThen, Words.Capital(Words.Of(control)), AdjusterWords.HowFar(control, from, to), Words.Stands(control, from), Words.Stands(control, to));

    /// <summary>What the trailing edge of a wing or a flap does that is moved by turns.</summary>
    static string Edge(Move move, Control control) => control.InTurns() && move.TrailingEdge is { } way
        ? Gaps.Fill(control.MovesIncidence() ? Say.ThatWingsTrailingEdge : Say.ThatFlapsTrailingEdge, Wire.Word(way)) : "";

    static string TurnOfEccentric(Move move)
    {
        var wing = move.Control == AdjustableControl.LeftEccentric ? Say.LeftWing : Say.RightWing;
        var edge = move.TrailingEdge is { } way ? Gaps.Fill(Say.TrailingEdge, Wire.Word(way)) : Say.TrailingEdgeBackToSame;
        var flats = move.Flats is { } size ? Gaps.Fill(Say.By, FlatsInWords.Of(size)) : "";
        var turn = move.Turn is { } seen ? Gaps.Fill(Say.TurnIt, seen) : Say.WayToTurnIsNotOnFile;
        return Gaps.Fill(Say.EccentricFromToFrontAndRear, wing, edge, flats, AdjusterDrawings.Setting(move.FromDeg), AdjusterDrawings.Setting(move.ToDeg), turn);
    }

    public static Control ControlOf(Move move) => Enum.Parse<Control>(move.Control.ToString());
}
