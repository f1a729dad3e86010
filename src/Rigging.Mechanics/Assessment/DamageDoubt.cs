using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Why damage or misassembly is not ruled out. As long as there is a reason nothing is moved and nothing is flown: what may be
/// broken is looked at on the ground first.
/// </summary>
static class DamageDoubt
{
    /// <summary>From here on damage is the likeliest explanation.</summary>
    const double Half = 0.5;

    /// <summary>Usual travel of an aileron, degrees, and the share of it that nobody needs for a matter of rigging (common practice, no source).</summary>
    const double FullAileronDeg = 20, NearlyFull = 0.75;

    static readonly EventKind[] Bent =
    [
        EventKind.HardLanding, EventKind.GroundStrike, EventKind.FlapOverspeed, EventKind.Repair, EventKind.WingReplaced, EventKind.SuddenOnset, EventKind.FullControl,
        EventKind.ControlJammed, EventKind.FirstFlightAfterAssembly, EventKind.UnexplainedRecurrence, EventKind.DamageSuspected,
    ];

    /// <summary>Each as a sentence; empty when damage is ruled out, or nothing speaks of it. Asked for once: <see cref="Evidence.DamageDoubt"/>.</summary>
    public static IEnumerable<string> Reasons(Evidence evidence)
    {
        var request = evidence.Request;
        var cleared = Prerequisites.IsDamageCleared(request);
        var suspects = request.Events.Select(e => e.Kind).Where(Bent.Contains).Distinct().ToArray();
        if (request.GroundChecks.OfType<ClearanceCheck>().Any(c => c.Kind == GroundCheckKind.DamageInspection && !c.Clear))
            yield return "The damage inspection found something: repair to data comes before any adjustment.";
        else if (suspects.Length > 0 && !cleared)
            yield return $"{After(suspects)}: nothing is moved until a damage inspection is recorded clear.";
        else if (!cleared && NeededNearlyAll(evidence))
            yield return "It took nearly all the aileron to hold it level: nothing is moved until a damage inspection is recorded clear.";
        else if (evidence.Posterior.Probability((int)Cause.DamageOrMisassembly) >= Half)
            yield return "Something bent, broken or put together wrong is the likeliest explanation: look for it and record a clear inspection before anything is moved.";

        if (evidence.Aeroplane.Airframe.Limits is { } limits && Difference(evidence) is var deg && Math.Abs(deg) > limits.MaxPanelIncidenceDifferenceDeg)
            yield return string.Create(CultureInfo.InvariantCulture,
                $"The panels differ by about {Math.Abs(deg):0.00}°, beyond the {limits.MaxPanelIncidenceDifferenceDeg:0.00}° on file: look for damage or misassembly, not for a wrench.");
    }

    static string After(IEnumerable<EventKind> suspects) =>
        string.Join(", ", suspects.Where(kind => kind != EventKind.DamageSuspected).Select(Wire.Word)) is { Length: > 0 } events ? $"After {events}" : "Damage is suspected";

    /// <summary>A wheel that stands far over because its cables were set so turns no aileron.</summary>
    static bool NeededNearlyAll(Evidence evidence) => evidence.Diagnosis.Probability(Cause.AileronNeutralOffset) < Half && evidence.Request.TestPoints.SelectMany(point => point.Readings).OfType<WheelAngle>()
        .Any(held => Math.Abs(held.Deg) >= NearlyFull * FullAileronDeg * evidence.Aeroplane.Airframe.Ailerons.WheelDegPerAileronDeg);

    /// <summary>Panel incidence difference, right minus left: the largest that was measured, or what the evidence makes of a credible one.</summary>
    static double Difference(Evidence evidence)
    {
        const int panel = (int)Cause.PanelIncidenceDifference;
        var measured = evidence.Request.GroundChecks.OfType<AngleCheck>()
            .Where(check => check.Kind == GroundCheckKind.PanelIncidenceDifference)
            .Select(check => check.Deg);
        var inferred = evidence.Posterior.Probability(panel) >= Half ? evidence.Amplitude(Cause.PanelIncidenceDifference).Mean : 0;
        return measured.Append(inferred).MaxBy(Math.Abs);
    }
}
