using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Motion;

/// <summary>Why an aeroplane's figures determine no steady flight, each with the fields to fill in or to look at.</summary>
static class Uncomputable
{
    /// <summary>One radian of each aileron, or of panel incidence difference, rolls it at this pb/2V at the least: full aileron of 25° then still gives an eighth of the 0.07 that was asked of fighters (NACA, from memory).</summary>
    public const double LeastAileronPower = 0.02;

    /// <summary>Damping in roll of a wing is a tenth and more from an aspect ratio of one on (−πA/32, slender wing); half of that is no wing.</summary>
    public const double LeastRollDamping = 0.05;

    public static IEnumerable<Refusal> Of(Aeroplane aeroplane)
    {
        var (airframe, d, held) = (aeroplane.Airframe, aeroplane.Derivatives, aeroplane.Reference.Held);
        if (!(-d.ClP >= LeastRollDamping))
            yield return new("roll-not-damped", Said($"With a damping in roll of {d.ClP:0.###} the wing would hold no roll back: {Look("derivatives.clP", "wing.stations", airframe.Derivatives.ClP is null)}."));
        else if (!(d.ClAileron / -d.ClP >= LeastAileronPower))
            yield return new("ailerons-too-weak", Said($"By these figures the ailerons hold up no wing: {Look("derivatives.clAileron", "ailerons", airframe.Derivatives.ClAileron is null)}."));
        if (!(Math.Abs(aeroplane.Panel.RollingMomentCoefficient) / -d.ClP >= LeastAileronPower))
            yield return new("panel-too-narrow", "The adjustable panel is so narrow that no incidence of it rolls the aeroplane: look at wing.panelInboardYM.");
        if (!(held.RudderApart >= HeldFlight.LeastRudderApart))
            yield return new("rudder-like-sideslip", Said($"By these figures the rudder does what a sideslip does, so that no flight with the ball in the middle can be computed (what does not cancel is {held.RudderApart * 100:0} %, wanted {HeldFlight.LeastRudderApart * 100:0} %): {Fields(airframe, EstimableFigure.CYBeta, EstimableFigure.CnBeta, EstimableFigure.CYRudder, EstimableFigure.CnRudder)}."));
        if (Math.Abs(held.SlipPerRudder) < HeldFlight.LeastSlipPerRudder)
            yield return new("rudder-without-effect", Said($"By these figures the rudder steers nothing, so that no flight can be computed in which it does: {Fields(airframe, EstimableFigure.CnRudder)}."));
        else if (!(held.SlipPerRudder is > 0 and <= HeldFlight.MostSlipPerRudder))
            yield return new("nose-not-held", Said($"By these figures the fin does not hold the nose into the wind, so that no flight with the feet off can be computed: {Fields(airframe, EstimableFigure.CnBeta, EstimableFigure.CnRudder)}."));
    }

    static string Look(string figure, string geometry, bool byGeometry) => byGeometry ? $"look at {geometry}, or fill in {figure}" : $"look at {figure}";

    /// <summary>Those that are estimated are asked for; where all are the file's own they are looked at.</summary>
    static string Fields(Airframe airframe, params EstimableFigure[] figures)
    {
        var estimated = figures.Where(figure => airframe.Estimated?.Any(one => one.Figure == figure) == true).ToArray();
        return $"{(estimated.Length > 0 ? "fill in" : "look at")} {string.Join(", ", (estimated.Length > 0 ? estimated : figures).Select(Field))}";
    }

    static string Field(EstimableFigure figure) => $"derivatives.{char.ToLowerInvariant($"{figure}"[0])}{$"{figure}"[1..]}";

    static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
