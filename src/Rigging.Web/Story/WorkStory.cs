using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>The work in words: what was found, turned, torqued and left.</summary>
static class WorkStory
{
    public static Told Of(WorkStarted started) => new("Work started",
        ["From here on it does not fly until the work is approved.", $"Wing support: {started.WingSupport}", .. Line.Quote(started.Remarks)]);

    public static Told Of(AsFound found) => new("As found", [.. Bushings(found.Bushings), .. Line.Quote(found.Other)]);

    public static Told Of(WorkHandedOver handover) => new("Work handed over",
    [
        .. Line.Quote(handover.State),
        handover.Loose is { } loose ? new($"LOOSE: {loose} Do not move the aircraft.", Tone.Stop) : new Line("Nothing is loose.", Tone.Good),
    ]);

    public static Told Of(TorqueApplied torque) => new($"Torqued: {torque.Fastener}",
    [
        $"Target {InLb(torque.TargetMinInLb, torque.TargetMaxInLb)} by {torque.TargetSource}, {Words.Of(torque.Lubrication)}, {Words.Of(torque.Turned)}.",
        torque.TargetIncludesPrevailing ? "That figure includes the prevailing torque."
            : torque.RunOnInLb is { } runOn ? $"Run-on torque {Words.Number(runOn, 1)}{Space}in·lb added: final {InLb(torque.FinalMinInLb, torque.FinalMaxInLb)}."
            : new Line("Run-on torque not recorded.", Tone.Missing),
        $"Reached {Words.Number(torque.ReachedInLb, 1)}{Space}in·lb with wrench {torque.WrenchCode ?? "(no code)"} set to {Words.Number(torque.SettingInLb, 1)}{Space}in·lb{Extension(torque)}; calibration due {torque.CalibrationDue?.ToString("uuuu-MM-dd", null) ?? "not on file"}.",
        torque.TorqueStripe ? "Torque stripe applied." : new Line("No torque stripe.", Tone.Caution),
    ]);

    public static Told Of(WorkDone done) => new("Work done",
    [
        new(done.Description, Tone.Quoted),
        .. Bushings(done.AsLeft).Select(line => line with { Text = $"As left: {line.Text}" }),
        .. Line.Quote(done.OtherAsLeft),
        .. done.DiffersBecause is { } reason ? [new Line($"As left differs from the plan, because: {reason}", Tone.Caution)] : Array.Empty<Line>(),
        .. string.IsNullOrWhiteSpace(done.DirectionProof) ? Array.Empty<Line>() : [$"Direction proved: {done.DirectionProof}"],
        $"Disturbed: {(done.Disturbed.Count == 0 ? "nothing" : string.Join("; ", done.Disturbed))}.",
        .. done.Parts.Select(part => (Line)$"Part: {part.Quantity} × {part.Description}, {part.PartNumber}."),
        .. done.Resets.Select(reset => (Line)$"Checked again: {reset.What}: {reset.Result}."),
        done is { EverythingRefitted: true, NoTemporaryHardware: true, NothingLoose: true }
            ? "Everything removed is refitted, no temporary hardware is left, nothing is loose."
            : new Line("Not everything is refitted and secured.", Tone.Stop),
        $"Completed {done.CompletedOn:uuuu-MM-dd} at {Words.Number(done.TotalTimeH, 1)}{Space}h total time; {Words.Number(done.ManHours, 1)} man hours.",
    ]);

    /// <summary>Both wings' bushings, each as an angle and a way the trailing edge goes.</summary>
    static IEnumerable<Line> Bushings(BushingAngles angles)
    {
        if (angles is (null, null, null, null)) return ["No eccentric was touched."];
        return [Wing("Left", angles.LeftFrontDeg, angles.LeftRearDeg), Wing("Right", angles.RightFrontDeg, angles.RightRearDeg)];
    }

    static Line Wing(string side, double? front, double? rear) => (front, rear) switch
    {
        (null, null) => new Line($"{side} wing eccentric not recorded.", Tone.Missing),
        ({ } f, { } r) when f == r => $"{side} wing eccentric, front and rear bushing: {TrailingEdge(f)}.",
        _ => new Line($"{side} wing eccentric: front bushing {One(front)}, rear bushing {One(rear)}.", Tone.Caution),
    };

    static string One(double? angle) => angle is { } deg ? TrailingEdge(deg) : "not recorded";

    static string InLb(double low, double high) => $"{Words.Number(low, 1)} to {Words.Number(high, 1)}{Space}in·lb";

    static string Extension(TorqueApplied torque) => torque.ExtensionIn == 0 ? ""
        : $", extension {Words.Number(torque.ExtensionIn)}{Space}in at {Words.Number(torque.ExtensionAngleDeg, 0)}°";
}
