using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>What a person must know to read the answer rightly, as sentences.</summary>
static class Cautions
{
    static readonly GroundCheckKind[] OnlyRecorded =
        [GroundCheckKind.AileronTab, GroundCheckKind.RudderTab, GroundCheckKind.CableTension, GroundCheckKind.ControlFriction, GroundCheckKind.ContourSurvey];

    public static IEnumerable<string> For(Evidence evidence)
    {
        var request = evidence.Request;
        yield return "Computed from a model of this airframe; the approved data and the flight decide.";

        if (evidence.Aeroplane.Airframe.Estimated is { Count: > 0 } estimated)
            yield return $"Estimated from geometry and not on file, so the intervals are wider: {string.Join(", ", estimated.Select(figure => Wire.Word(figure.Figure)))}.";
        if (request.TestPoints.SelectMany(point => point.Readings).Any(reading => Math.Abs(BankOf(reading)) > ReleasedMotion.HonestBankDeg))
            yield return $"A bank of more than {ReleasedMotion.HonestBankDeg:0}° was read: the motion is computed as if banks were small, so that reading tells less than it seems. Time a smaller bank.";

        var left = Enum.GetValues<Cause>().Where(cause => ModelledCause.IndexOf(cause) < 0).Select(Wire.Word);
        yield return $"Not assessed, so not ruled out: {string.Join(", ", left)}. The probabilities are among the causes assessed.";

        var unseen = ModelledCause.All.Where((_, index) => !evidence.Bears(index)).Select(modelled => Wire.Word(modelled.Cause)).ToArray();
        if (unseen.Length > 0)
            yield return $"Nothing reported bears on: {string.Join(", ", unseen)}.";

        if (evidence.TrustsTheBall && !request.GroundChecks.OfType<BallOffsetCheck>().Any())
            yield return "The ball was not levelled to the airframe: half a width of error rolls an aeroplane whose pilot follows it more than most heavy wings do.";
        if (request.TestPoints.Any(point => point.Manoeuvre == Manoeuvre.HoldNeutral)
            && request.GroundChecks.All(check => check.Kind != GroundCheckKind.AileronNeutralOffset))
            yield return "Holding the wheel at neutral is weak evidence unless its neutral was marked on the ground.";
        if (request.Autopilot == Autopilot.Unknown && request.TestPoints.Count > 0)
            yield return "Whether an autopilot was off or disconnected is not on record; a servo that drags looks like a heavy wing.";

        var recorded = request.GroundChecks.Select(check => check.Kind).Where(OnlyRecorded.Contains).Distinct().Order().Select(Wire.Word).ToArray();
        if (recorded.Length > 0)
            yield return $"On record but not used as evidence yet: {string.Join(", ", recorded)}.";
        foreach (var sentence in evidence.LeftAside)
            yield return sentence;
    }

    static double BankOf(Reading reading) => reading switch
    {
        BankAfter bank => bank.Deg,
        TimeToBank time => time.Deg,
        _ => 0,
    };
}
