using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Adjusters;

/// <summary>
/// Something whose setting shifts the amplitude of one cause in a straight line: strut fork, flap rod, fixed tab. The eccentric,
/// which is no straight line, has its own type.
/// </summary>
/// <param name="Control">Which one.</param>
/// <param name="Cause">What it acts on; the amplitude is in that cause's unit and sign.</param>
/// <param name="Unit">Of the setting: <c>turns</c> or <c>°</c>.</param>
/// <param name="PerUnit">Amplitude per unit of setting, signed.</param>
/// <param name="Least">The stop at one end.</param>
/// <param name="Greatest">The stop at the other.</param>
/// <param name="Step">Smallest change anybody can set; more than 0.</param>
public sealed record Adjuster(AdjustableControl Control, Cause Cause, string Unit, double PerUnit, double Least, double Greatest, double Step)
{
    /// <summary>
    /// The one that a control names on this aeroplane; a tab's stop is what the file says, or 45° either way. Refused where its data are not on
    /// file, and as <c>not-a-straight-line</c> for an eccentric or the aileron neutral.
    /// </summary>
    public static Answer<Adjuster> On(AdjustableControl control, Motion.Aeroplane aeroplane)
    {
        ArgumentNullException.ThrowIfNull(aeroplane);
        var airframe = aeroplane.Airframe;
        var wing = control is AdjustableControl.LeftStrutFork or AdjustableControl.LeftFlapRod ? Side.Left : Side.Right;
        return control switch
        {
            AdjustableControl.AileronTab => TabBend.OfAileron(airframe, TabBend.Furthest),
            AdjustableControl.RudderTab => TabBend.OfRudder(airframe, TabBend.Furthest),
            AdjustableControl.LeftStrutFork or AdjustableControl.RightStrutFork => airframe.StrutFork is { } fork
                ? StrutFork.On(aeroplane, wing, fork)
                : new Refusal("strut-fork-not-on-file", "No rear strut fork is on file for this airframe."),
            AdjustableControl.LeftFlapRod or AdjustableControl.RightFlapRod => airframe.FlapRod is { } rod
                ? FlapRod.On(wing, rod)
                : new Refusal("flap-rod-not-on-file", "No flap rod is on file for this airframe."),
            _ => new Refusal("not-a-straight-line", $"The {control.InWords()} shifts no amplitude in a straight line."),
        };
    }

    /// <summary>Amplitude of one step, 0 or more: nothing finer can be set.</summary>
    public double Resolution => Math.Abs(PerUnit * Step);

    /// <summary>What going from one setting to another does to the amplitude.</summary>
    public double AmplitudeChange(double from, double to) => PerUnit * (to - from);

    /// <summary>
    /// The setting nearest to a wanted change, in whole steps from where it stands. Refused as <c>nothing-to-turn</c> when the
    /// change is less than half a step, <c>at-stops</c> when a stop is in the way of more than half a step, and
    /// <c>found-beyond-stops</c> when it stands outside its stops already: then it is not adjusted but looked into.
    /// </summary>
    public Answer<AdjusterMove> For(double from, double wantedChange)
    {
        if (!(from >= Least && from <= Greatest))
            return new Refusal("found-beyond-stops", string.Create(CultureInfo.InvariantCulture, $"The {Words} stands at {from:0.##} {Unit}, outside {Least:0.##} to {Greatest:0.##}: find out why before it is moved."));
        if (!(Math.Abs(wantedChange) > Resolution / 2))
            return new Refusal("nothing-to-turn", string.Create(CultureInfo.InvariantCulture, $"One step of the {Words} is worth {Resolution:0.###}°, more than twice what is wanted."));
        var steps = Math.Round(wantedChange / (PerUnit * Step));
        var to = from + steps * Step;
        if (to < Least - Step * 1e-9 || to > Greatest + Step * 1e-9)
            return new Refusal("at-stops", string.Create(CultureInfo.InvariantCulture, $"The {Words} would end at {to:0.##} {Unit}; it may stand between {Least:0.##} and {Greatest:0.##}."));
        var change = AmplitudeChange(from, to);
        return new AdjusterMove(Control, from, to, change, wantedChange - change);
    }

    string Words => Control.InWords();
}

/// <param name="AmplitudeChange">What it does, in the cause's unit.</param>
/// <param name="LeftOver">Wanted and not reached, less than half a step.</param>
public sealed record AdjusterMove(AdjustableControl Control, double From, double To, double AmplitudeChange, double LeftOver);
