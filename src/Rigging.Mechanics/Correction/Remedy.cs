using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>
/// What is done about a cause that no eccentric cures: put back to its book setting, repaired or replaced to data, or, where the
/// airframe has one and it is known how it stands, a fixed tab bent.
/// </summary>
static class Remedy
{
    public static CorrectionPlan Of(Cause cause, Evidence evidence, Experience experience) => cause switch
    {
        Cause.RudderOrFinOffset => OfTab(cause, evidence, experience, AdjustableControl.RudderTab),
        Cause.AileronFloat => OfTab(cause, evidence, experience, AdjustableControl.AileronTab),
        Cause.AileronNeutralOffset => ToNeutral(evidence),
        Cause.TipIncidenceDifference => AdjusterPlan.OfStrutForks(cause, evidence, experience) ?? CorrectionPlan.Refused([NotAnAdjustment(cause)]),
        Cause.FlapDifference => AdjusterPlan.OfFlapRods(evidence, experience) ?? CorrectionPlan.Refused([NotAnAdjustment(cause)]),
        _ => CorrectionPlan.Refused([NotAnAdjustment(cause)]),
    };

    public static Refusal NotAnAdjustment(Cause cause) => new("not-an-adjustment", cause switch
    {
        Cause.RudderOrFinOffset => "What was seen comes from yaw, feet off: look at rudder tab, fin, rudder cables and nose-wheel centring. Moving a wing would hide it, not cure it.",
        Cause.FlapDifference => "The flaps do not sit alike at the up stop: put the flap stop and rods back to their book setting first. Moving a wing would hide it, not cure it.",
        Cause.AileronFloat => "It rolls when the wheel is let go, from the ailerons: trailing-edge shape, hinge height or tab, repaired or replaced to data. No change of incidence cures it.",
        Cause.FuelAndLoading => "The load explains it; loading is never cured by moving a wing.",
        Cause.TipIncidenceDifference => "The wing is twisted towards its tip: an eccentric turns the panel as a whole and would leave the twist. Find out why it is twisted, and correct it to the approved data.",
        Cause.ContourOrFairing => "A skin, leading edge, tip or fairing makes the difference: repair or refit it to data. Turning the wing against it would only hide it.",
        Cause.InstrumentMisalignment => "The ball is out of true, and an aeroplane whose pilot follows it rolls: level the aeroplane across and set the instrument. There may be nothing wrong with the wings.",
        Cause.ControlFriction => "It stays where the last input left it: find what drags (servo, pulley, cable tension, hinge). An adjustment would move the place where it sticks.",
        Cause.AileronNeutralOffset => "The wheel is not centred when the ailerons are neutral: set cables and neutral to the book. No change of incidence cures it.",
        Cause.Slipstream => "It comes and goes with power: that is the propeller's slipstream and the offsets built in against it. A wing set for one power is wrong at every other.",
        _ => "It is not a matter of adjustment: repair or replace to data.",
    });

    static CorrectionPlan OfTab(Cause cause, Evidence evidence, Experience experience, AdjustableControl control)
    {
        var airframe = evidence.Aeroplane.Airframe;
        var tab = Adjuster.On(control, evidence.Aeroplane);
        if (!tab.Ok || evidence.Request.StandsAt(control) is not { } fromDeg)
            return CorrectionPlan.Refused([NotAnAdjustment(cause)]);

        var amplitude = evidence.Amplitude(cause).Mean;
        var effect = experience.For(control, evidence.Practice.ModelError);
        var bend = tab.Value.For(fromDeg, -amplitude / effect.SizingFactor);
        if (!bend.Ok)
            return CorrectionPlan.Refused([NotAnAdjustment(cause), .. bend.Refusals]);

        var tendency = evidence.TendencyAfter(bend.Value.AmplitudeChange * evidence.TendencyGains[ModelledCause.Of(cause).First], effect);
        return new(
            new(
                [new(control, bend.Value.From, bend.Value.To, null, WayUpOrDown(control, bend.Value), WayLeftOrRight(control, bend.Value), null)],
                tendency.Estimate("deg/s"),
                tendency.Within(airframe.Limits!.AcceptableRollTendencyDegPerS)),
            [],
            [
                cause == Cause.RudderOrFinOffset
                    ? "The tab comes after cables, nose-wheel centring and fin are found right; it takes out what is left."
                    : "The tab comes last, after trailing-edge shape and hinge height are found right; one tuning change, then fly.",
                .. Foreseen.NotInTheTendency(control) is { } elsewhere ? [elsewhere] : (string[])[],
                "Bend with the tool the manual names, a little at a time; a tab bent back and forth cracks. It adds a little drag, and force at the wheel or pedals at every other speed.",
            ]);
    }

    static TrailingEdge? WayUpOrDown(AdjustableControl control, AdjusterMove bend) => control != AdjustableControl.AileronTab ? null
        : bend.To > bend.From ? TrailingEdge.Down : TrailingEdge.Up;

    static string? WayLeftOrRight(AdjustableControl control, AdjusterMove bend) => control != AdjustableControl.RudderTab ? null
        : bend.To > bend.From ? "trailing edge left, looking forward" : "trailing edge right, looking forward";

    /// <summary>How far it is out is only estimated; what is asked for is neutral, as the book has it.</summary>
    static CorrectionPlan ToNeutral(Evidence evidence)
    {
        var limit = evidence.Aeroplane.Airframe.Limits!.AcceptableRollTendencyDegPerS;
        var tendency = evidence.Tendency();
        var stands = evidence.Amplitude(Cause.AileronNeutralOffset).Estimate("deg");
        var offset = stands.Mean;
        var where = WhatIsKnown.Of(stands.Low, stands.High) switch
        {
            Known.Positive => string.Create(CultureInfo.InvariantCulture, $"about {offset:0.0}° right wing down"),
            Known.Negative => string.Create(CultureInfo.InvariantCulture, $"about {-offset:0.0}° left wing down"),
            _ => "off neutral, which way is not known,",
        };
        return new(
            new([new(AdjustableControl.AileronNeutral, Math.Round(offset, 1), 0, null, null, null, null)], tendency.Estimate("deg/s"), tendency.Within(limit)),
            [],
            [$"The ailerons stand {where} with the wheel centred: set cables and neutral to the book, then check travel and tension. Hands off it rolls as before."]);
    }
}
