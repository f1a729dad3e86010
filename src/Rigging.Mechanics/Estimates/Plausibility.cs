using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Estimates;

/// <summary>Something in a well-formed airframe that is unlikely for a light aeroplane. Nothing is refused for it.</summary>
/// <param name="Path">As in the faults of reading: <c>$.mass.ixxKgM2</c>.</param>
public sealed record Warning(string Path, string Sentence);

/// <summary>Holds an airframe against what light aeroplanes are like, and its motion against what can be flown.</summary>
public static class Plausibility
{
    // Common practice, no source, except the roll mode: 1.0 s is the limit of MIL-F-8785C for small aeroplanes, from memory.
    static readonly (double Low, double High) AspectRatio = (5, 12), RollGyration = (0.07, 0.18), YawGyration = (0.12, 0.28), RollModeS = (0.04, 1.0);
    const double QuickestSpiralS = 10;

    public static IReadOnlyList<Warning> Of(Airframe airframe)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        var aspectRatio = Aeroplane.PlanformOf(airframe.Wing).AspectRatio;
        List<Warning> warnings = [];
        void Outside((double Low, double High) usual, double value, string path, string what)
        {
            if (!(value >= usual.Low && value <= usual.High))
                warnings.Add(new(path, string.Create(CultureInfo.InvariantCulture, $"{what} comes to {value:0.###}; a light aeroplane has {usual.Low} to {usual.High}.")));
        }
        double Gyration(double inertia) => Math.Sqrt(inertia / airframe.Mass.ReferenceKg) / airframe.Wing.SpanM;

        Outside(AspectRatio, aspectRatio, "$.wing", "The aspect ratio");
        Outside(RollGyration, Gyration(airframe.Mass.IxxKgM2), "$.mass.ixxKgM2", "The radius of gyration in roll over the span");
        Outside(YawGyration, Gyration(airframe.Mass.IzzKgM2), "$.mass.izzKgM2", "The radius of gyration in yaw over the span");
        if (!(airframe.Mass.IzzKgM2 > airframe.Mass.IxxKgM2))
            warnings.Add(new("$.mass.izzKgM2", "Turning in yaw takes more than rolling on every light aeroplane: the two inertias may be changed over."));
        warnings.AddRange(Motion(airframe, Outside));
        return warnings;
    }

    static List<Warning> Motion(Airframe airframe, Action<(double Low, double High), double, string, string> outside)
    {
        var modes = new Aeroplane(airframe).Reference.Model.Modes();
        List<Warning> warnings = [];
        if (modes.Roll.Imaginary == 0)
            outside(RollModeS, -1 / modes.Roll.Real, "$.derivatives", "The time in which a roll settles, seconds,");
        else
            warnings.Add(new("$.derivatives", "Roll and spiral have merged into one slow swing, which light aeroplanes do not have: look at clBeta and clR."));
        if (modes.Spiral.Real > 0 && Math.Log(2) / modes.Spiral.Real is var doublesS && doublesS < QuickestSpiralS)
            warnings.Add(new("$.derivatives", string.Create(CultureInfo.InvariantCulture, $"A bank left alone doubles in {doublesS:0.0} s: the spiral is quicker than can be flown with a map in hand; look at clBeta, clR, cnBeta and cnR.")));
        if (modes.DutchRoll.Real > 0)
            warnings.Add(new("$.derivatives", "The yawing swing grows by itself: look at cnR, cnBeta and cYBeta."));
        if (airframe.Derivatives.CnBeta <= 0)
            warnings.Add(new("$.derivatives.cnBeta", "The aeroplane does not turn into the wind: cnBeta is positive on every aeroplane that is steered by hand."));
        return warnings;
    }
}
