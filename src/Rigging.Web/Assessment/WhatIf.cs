using System.Collections.Immutable;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Mechanics.Loading;
using Rigging.Squawks.Entries;

namespace Rigging.Web.Assessment;

/// <summary>What somebody supposes: a speed, who is aboard, how the fuel lies, how the adjusters stand.</summary>
/// <param name="Aboard">Place in <see cref="WhatIf.Loads"/>.</param>
/// <param name="FuelL">Right minus left.</param>
/// <param name="Moved">Those that are supposed to stand otherwise than found.</param>
public sealed record Supposition(double CasKt, int Aboard, double FuelL, ImmutableSortedDictionary<Control, double> Moved)
{
    public Supposition With(Slider slider, double value) => this with { Moved = value == slider.Found ? Moved.Remove(slider.Control) : Moved.SetItem(slider.Control, value) };
}

/// <summary>One adjuster that may be supposed to move, in its own unit and sign.</summary>
/// <param name="Found">How it stands on record.</param>
public sealed record Slider(Control Control, double Found, double Least, double Greatest, double Step);

/// <summary>The sliders of an assessment: how far each goes, and what the aeroplane is expected to do there.</summary>
public sealed class WhatIf
{
    readonly Outlook outlook;
    readonly Airframe airframe;

    /// <param name="request">What the outlook was made from: an adjuster that nobody recorded cannot be supposed to move.</param>
    public WhatIf(Outlook outlook, Airframe airframe, AssessmentRequest request)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(airframe);
        ArgumentNullException.ThrowIfNull(request);
        (this.outlook, this.airframe) = (outlook, airframe);
        Loads = [new(Say.AsItIsRiggedFor, airframe.Reference.Load), .. PilotsCurrency.CommonLoads(airframe, Desk.Equivalents.PersonKg)];
        Adjusters = [.. Enum.GetValues<Control>().Where(AgreeForm.InNumbers).Select(control => SliderOf(control, request)).OfType<Slider>()];
        Start = new(airframe.Reference.CasKt, 0, 0, ImmutableSortedDictionary<Control, double>.Empty);
    }

    /// <summary>Everything as it is, at the reference.</summary>
    public Supposition Start { get; }

    public IReadOnlyList<NamedLoad> Loads { get; }

    /// <summary>Without those that are not on record, disagree front to rear, or have no data on file.</summary>
    public IReadOnlyList<Slider> Adjusters { get; }

    /// <summary>From a third above the stall to cruise; only the reference where no speeds are on file.</summary>
    public (double From, double To) SpeedsKt => airframe.SpeedsKt is { } limits
        ? (Math.Ceiling(1.3 * limits.StallClean), Math.Floor(limits.MaxStructuralCruise))
        : (airframe.Reference.CasKt, airframe.Reference.CasKt);

    /// <summary>The largest fuel difference that the fuel of the reference allows, litres; 0 without a tank beside the centreline.</summary>
    public double MostFuelL => airframe.Tanks.Where(tank => tank.ArmM != 0).ToArray() is { Length: > 0 } tanks
        ? Math.Floor(2 * tanks.Min(tank => Math.Min(InTank(tank), tank.CapacityL - InTank(tank))))
        : 0;

    public Estimate Expected(Supposition supposed)
    {
        ArgumentNullException.ThrowIfNull(supposed);
        return outlook.RollTendency(new(supposed.CasKt, Load(supposed),
            [.. Adjusters.Where(slider => supposed.Moved.ContainsKey(slider.Control)).Select(slider => new SetTo(slider.Control.OnFile(), slider.Found, supposed.Moved[slider.Control]))]));
    }

    /// <summary>At the reference, after one planned move; null when nothing can be foreseen of it.</summary>
    public Foreseen? After(PlannedMove move)
    {
        ArgumentNullException.ThrowIfNull(move);
        return move.Numbers() is ({ } from, { } to) ? outlook.After(new SetTo(move.Control.OnFile(), from, to)).Value : null;
    }

    Load Load(Supposition supposed)
    {
        var load = Loads[supposed.Aboard].Load;
        return load with { FuelL = airframe.Tanks.ToDictionary(tank => tank.Name, tank => InTank(tank) + Math.Sign(tank.ArmM) * supposed.FuelL / 2) };
    }

    double InTank(Tank tank) => airframe.Reference.Load.FuelL.GetValueOrDefault(tank.Name);

    Slider? SliderOf(Control control, AssessmentRequest request)
    {
        if (request.StandsAt(control.OnFile()) is not { } found) return null;
        if (!control.IsEccentric())
            return outlook.Adjuster(control.OnFile()).Value is { } adjuster ? new(control, found, adjuster.Least, adjuster.Greatest, adjuster.Step) : null;
        if (Eccentric.On(airframe).Value is not { } eccentric) return null;
        // Half the step that a wrench is asked for.
        var (stop, step) = (Math.Min(eccentric.MaxAngle.Degrees, 90), eccentric.PerFlat.Degrees * (airframe.Limits?.IncidenceStepFlats ?? 0.5) / 2);
        return new(control, found, -stop, stop, step);
    }
}
