using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>What a person must know to read the answer rightly, as sentences.</summary>
static class Cautions
{
    public static IEnumerable<string> For(Evidence evidence)
    {
        var request = evidence.Request;
        yield return evidence.DamageDoubt.Count > 0 ? "Computed from a model of this airframe; the approved data decide." : "Computed from a model of this airframe; the approved data and the flight decide.";
        yield return string.Create(CultureInfo.InvariantCulture, $"The wing's figures are computed on {evidence.Aeroplane.Panels} panels; by two coarser grids they are within {evidence.Aeroplane.GridErrorPercent:0.0} %.");

        if (evidence.Aeroplane.Airframe.Estimated is { Count: > 0 } estimated)
            yield return $"Estimated from geometry and not on file, so the intervals are wider: {string.Join(", ", estimated.Select(figure => Wire.Word(figure.Figure)))}.";
        if (evidence.Aeroplane.Airframe.Priors is { Count: > 0 } priors)
            yield return $"Of this type's own experience instead of the usual: {string.Join("; ", priors.Select(prior => $"{Wire.Word(prior.Cause)} ({prior.Reason.TrimEnd('.')})"))}.";
        if (request.TestPoints.SelectMany(point => point.Readings).Any(reading => Math.Abs(BankOf(reading)) > ReleasedMotion.HonestBankDeg))
            yield return $"A bank of more than {ReleasedMotion.HonestBankDeg:0}° was read: the motion is computed as if banks were small, so it counts as that much or more.{(evidence.DamageDoubt.Count > 0 ? "" : " Time a smaller bank.")}";
        if (request.TestPoints.Any(point => Math.Abs(point.FlapDeg) > Evidence.FlapUpDeg))
            yield return "With flap lowered the flaps' own difference and the lift they carry are modelled; the aeroplane's derivatives are taken as those with flap up.";

        var unseen = ModelledCause.All.Where((_, index) => !evidence.Bears(index)).Select(modelled => Wire.Word(modelled.Cause)).ToArray();
        if (unseen.Length > 0)
            yield return $"Nothing reported bears on: {string.Join(", ", unseen)}. They are not ruled out.";

        if (evidence.TrustsTheBall && !request.GroundChecks.OfType<BallOffsetCheck>().Any())
            yield return "The ball was not levelled to the airframe: half a width of error rolls an aeroplane whose pilot follows it more than most heavy wings do.";
        if (request.TestPoints.Any(point => point.Manoeuvre == Manoeuvre.HoldNeutral)
            && request.GroundChecks.All(check => check.Kind != GroundCheckKind.AileronNeutralOffset))
            yield return "Holding the wheel at neutral is weak evidence unless its neutral was marked on the ground.";
        if (request.Autopilot == Autopilot.Unknown && request.TestPoints.Count > 0)
            yield return "Whether an autopilot was off or disconnected is not on record; a servo that drags looks like a heavy wing.";

        var recorded = request.GroundChecks.Where(check => !GroundEvidence.IsUsed(check, evidence.Aeroplane.Airframe)).Select(check => Wire.Word(check.Kind)).Distinct().ToArray();
        if (recorded.Length > 0)
            yield return $"On record, for a person to compare with the approved data, and not used as evidence: {string.Join(", ", recorded)}.";
        if (evidence.Fit.IsPoor)
            yield return "Nothing in the catalogue fits what was read: a reading is wrong, something is broken, or it is a cause nobody thought of.";
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
