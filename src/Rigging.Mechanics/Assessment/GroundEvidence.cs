using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Ground checks that measure: each a direct observation of one amplitude. A bent tab is a part of its surface's offset, so it
/// says where that lies, only less closely. Looks that find something or nothing shift the odds instead, in <see cref="PriorOdds"/>.
/// </summary>
static class GroundEvidence
{
    /// <summary>
    /// By how often the usual model error a panel difference at the level is uncertain as the rolling moment of damage: ten per cent of
    /// what a degree of panel is worth, its lift slope and planform (from memory).
    /// </summary>
    const double PanelWorthTimes = 0.5;

    public static IEnumerable<Observation> Of(AssessmentRequest request, Aeroplane aeroplane, Practice practice)
    {
        var airframe = aeroplane.Airframe;
        for (var i = 0; i < request.GroundChecks.Count; i++)
        {
            var check = request.GroundChecks[i];
            if (Measured(check, airframe) is not var (cause, value, sd, scale))
                continue;
            var figure = practice.Check(check.Kind)!;
            var usual = figure.Sd!.Value;
            // A tab's own reading error comes on top of what the tab does not tell, and what is usual differs too.
            var variance = (scale is { } gain ? usual * usual + Math.Pow(gain * (sd ?? 1), 2) : Math.Pow(sd ?? usual, 2)) + figure.UsualSd * figure.UsualSd;
            yield return new(new(null, i), ReadingFamily.Ground, value, figure.Usual, Gains(cause, aeroplane), Math.Max(variance, Evidence.LeastVariance), ErrorTimes: cause == Cause.PanelIncidenceDifference ? AsDamage : null);
        }
    }

    static readonly double[] AsDamage = [.. ModelledCause.Traces.Select(trace => trace.Cause == Cause.DamageOrMisassembly ? PanelWorthTimes : 0), 0];

    /// <summary>What one unit of each amplitude adds to the value of a check that measures this cause.</summary>
    public static double[] Gains(Cause measured, Aeroplane aeroplane)
    {
        var gains = new double[ModelledCause.Traces.Count];
        gains[ModelledCause.Of(measured).First] = 1;
        // A level does not tell a panel that was set from one that was bent.
        if (measured == Cause.PanelIncidenceDifference)
            gains[ModelledCause.Of(Cause.DamageOrMisassembly).First] = 180 / (Math.PI * aeroplane.Reference.PanelIncidence.Rolling);
        return gains;
    }

    /// <summary>Whether a check's value is used as evidence with this airframe.</summary>
    public static bool IsUsed(GroundCheck check, Airframe airframe) => check is ClearanceCheck || Measured(check, airframe) is not null;

    /// <summary>Whose amplitude a measuring check bears on.</summary>
    public static Cause Measures(GroundCheckKind check) => check switch
    {
        GroundCheckKind.RudderTab => Cause.RudderOrFinOffset,
        GroundCheckKind.AileronTab => Cause.AileronFloat,
        _ => ModelledCause.All.Single(modelled => modelled.MeasuredBy == check).Cause,
    };

    static (Cause Cause, double Value, double? Sd, double? Gain)? Measured(GroundCheck check, Airframe airframe) => check switch
    {
        AngleCheck { Kind: GroundCheckKind.RudderTab } tab => airframe.Rudder is { FixedTabGain: var gain }
            ? (Cause.RudderOrFinOffset, -gain * tab.Deg, tab.SdDeg, gain)
            : null,
        AileronTabCheck tab => airframe.Ailerons.FixedTab is { Gain: var gain }
            // Bent down it drives its aileron up: on the right that is right wing down.
            ? (Cause.AileronFloat, (tab.Side == Side.Right ? gain : -gain) * tab.Deg, tab.SdDeg, gain)
            : null,
        AngleCheck angle when ModelledCause.All.SingleOrDefault(modelled => modelled.MeasuredBy == angle.Kind) is { } modelled =>
            (modelled.Cause, angle.Deg, angle.SdDeg, null),
        BallOffsetCheck ball => (Cause.InstrumentMisalignment, ball.Widths, ball.Sd, null),
        ControlFrictionCheck friction => (Cause.ControlFriction, friction.N, friction.Sd, null),
        _ => null,
    };
}
