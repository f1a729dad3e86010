using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>The work in words: what was found, turned, torqued and left.</summary>
static class WorkStory
{
    public static Told Of(WorkStarted started) => new(Say.WorkStarted,
        [Say.FromHereOnItDoesNot, Gaps.Fill(Say.Support, started.WingSupport), .. Line.Quote(started.Remarks)]);

    public static Told Of(AsFound found) => new(Texts.AsFound, [.. Stands(found.Bushings, found.Adjusters), .. Line.Quote(found.Other)]);

    public static Told Of(WorkHandedOver handover) => new(Say.WorkHandedOver,
    [
        .. Line.Quote(handover.State),
        handover.Loose is { } loose ? new(Gaps.Fill(Say.LOOSEDoNotMoveAircraft, loose), Tone.Stop) : new Line(Say.NothingIsLoose, Tone.Good),
    ]);

    public static Told Of(TorqueApplied torque) => new(Gaps.Fill(torque.IsAboveItsLimits() ? Say.FoundOutOfLimits : Say.Torqued, torque.Fastener),
    [
        .. torque.IsAboveItsLimits() ? [new Line(Gaps.Fill(Say.AboveItsLimits, Words.Number(torque.ReachedInLb, 1), Words.Number(torque.FinalMaxInLb, 1), torque.OutOfLimitsDone), Tone.Stop)] : Array.Empty<Line>(),
        Gaps.Fill(Say.TargetBy, InLb(torque.TargetMinInLb, torque.TargetMaxInLb), torque.TargetSource, Words.Of(torque.Lubrication), Words.Of(torque.Turned)),
        torque.TargetIncludesPrevailing ? Say.ThatFigureIncludesPrevailingTorque
            : torque.RunOnInLb is { } runOn ? Gaps.Fill(Say.RunOnTorqueInlbAdded, Words.Number(runOn, 1), InLb(torque.FinalMinInLb, torque.FinalMaxInLb))
            : new Line(Say.RunOnTorqueNotRecorded, Tone.Missing),
        Gaps.Fill(Say.ReachedInlbWithWrenchSet, Words.Number(torque.ReachedInLb, 1), torque.WrenchCode ?? Say.NoCode, Words.Number(torque.SettingInLb, 1), Extension(torque), torque.CalibrationDue?.ToString("uuuu-MM-dd", null) ?? Say.NotOnFile),
        .. torque.Nut is { } nut ? [(Line)$"{Words.Capital(Words.Of(nut))}."] : Array.Empty<Line>(),
        .. torque.NoRunOnBecause is { } none ? [new Line(Gaps.Fill(Say.NoRunOnBecause, none), Tone.Caution)] : Array.Empty<Line>(),
        .. torque is { FigureFor: { } figure, OtherPartBecause: { } because } ? [new Line(Gaps.Fill(Say.OtherPartTurnedBecause, Words.Part(figure), Words.Part(torque.Turned), because), Tone.Caution)] : Array.Empty<Line>(),
        torque.TorqueStripe ? Say.TorqueStripeApplied : new Line(Say.NoTorqueStripe, Tone.Caution),
    ]);

    public static Told Of(WorkDone done) => new(Say.WorkDone,
    [
        new(done.Description, Tone.Quoted),
        .. Stands(done.AsLeft, done.AdjustersAsLeft).Select(line => line with { Text = Gaps.Fill(Say.AsLeft, line.Text) }),
        .. Line.Quote(done.OtherAsLeft),
        .. done.DiffersBecause is { } reason ? [new Line(Gaps.Fill(Say.AsLeftDiffersFromPlan, reason), Tone.Caution)] : Array.Empty<Line>(),
        .. done is { PredictedDegPerS: { } expected, PredictedLowDegPerS: { } low, PredictedHighDegPerS: { } high } ? [Gaps.Fill(Say.ExpectedAsLeft, Expected(expected, low, high))] : Array.Empty<Line>(),
        .. (done.Movements ?? []).Select(measured => (Line)Gaps.Fill(Say.DirectionProved, Words.Movement(measured))),
        .. string.IsNullOrWhiteSpace(done.DirectionProof) ? Array.Empty<Line>() : [Gaps.Fill(Say.DirectionProved, done.DirectionProof)],
        Gaps.Fill(Say.Disturbed, Words.Disturbed(done)),
        .. done.Parts.Select(part => (Line)Gaps.Fill(Say.Part, part.Quantity, part.Description, part.PartNumber)),
        .. done.Resets.Select(reset => (Line)Gaps.Fill(Say.CheckedAgain, reset.What, reset.Result)),
        done is { EverythingRefitted: true, NoTemporaryHardware: true, NothingLoose: true }
            ? Say.EverythingRemovedIsRefittedNo
            : new Line(Say.NotEverythingIsRefittedAndSecured, Tone.Stop),
        Gaps.Fill(Say.CompletedAtHTotalTime, $"{done.CompletedOn:uuuu-MM-dd}", Words.Number(done.TotalTimeH, 1), Words.Number(done.ManHours, 1) is not "1" and var hours ? Gaps.Fill(Say.ManHours, hours) : Say.ManHour),
    ]);

    /// <summary>Both wings' bushings, each as an angle and a way the trailing edge goes, and what else is counted; of eccentrics alone nothing is said where only something else was counted.</summary>
    static List<Line> Stands(BushingAngles angles, IReadOnlyList<AdjusterSetting>? others)
    {
        var counted = (others ?? []).Select(setting => (Line)(Words.Capital(Words.Setting(setting)) + ".")).ToList();
        if (angles == BushingAngles.None) return counted is [] ? [Say.NoEccentricWasTouched] : counted;
        return [Wing(Texts.Left, angles.LeftFrontDeg, angles.LeftRearDeg), Wing(Texts.Right, angles.RightFrontDeg, angles.RightRearDeg), .. counted];
    }

    static Line Wing(string side, double? front, double? rear) => (front, rear) switch
    {
        (null, null) => new Line(Gaps.Fill(Say.WingEccentricNotRecorded, side), Tone.Missing),
        ({ } f, { } r) when f == r => Gaps.Fill(Say.WingEccentricFrontAndRear, side, TrailingEdge(f)),
        _ => new Line(Gaps.Fill(Say.WingEccentricFrontBushing, side, One(front), One(rear)), Tone.Caution),
    };

    static string One(double? angle) => angle is { } deg ? TrailingEdge(deg) : Say.NotRecordedInText;

    static string InLb(double low, double high) => Gaps.Fill(Say.FromToInLb, Words.Number(low, 1), Words.Number(high, 1));

    static string Extension(TorqueApplied torque) => torque.ExtensionIn == 0 ? ""
        : Gaps.Fill(Say.ExtensionInAt, Words.Number(torque.ExtensionIn), Words.Number(torque.ExtensionAngleDeg, 0));
}
