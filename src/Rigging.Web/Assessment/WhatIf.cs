using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Mechanics.Loading;
using Rigging.Squawks.Entries;
using UnitsNet;
using BushingAngles = Rigging.Mechanics.Contract.BushingAngles;

namespace Rigging.Web.Assessment;

/// <summary>What somebody supposes: a speed, who is aboard, how the fuel lies, how the eccentrics stand.</summary>
/// <param name="Aboard">Place in <see cref="WhatIf.Loads"/>.</param>
/// <param name="FuelL">Right minus left.</param>
/// <param name="LeftDeg">Of the left eccentric from neutral, positive lowers the trailing edge.</param>
public sealed record Supposition(double CasKt, int Aboard, double FuelL, double LeftDeg, double RightDeg);

/// <summary>The sliders of an assessment: how far each goes, and what the aeroplane is expected to do there.</summary>
public sealed class WhatIf
{
    readonly Outlook outlook;
    readonly Airframe airframe;
    readonly Eccentric? eccentric;

    /// <param name="found">How the eccentrics stand; unknown ones cannot be supposed to turn.</param>
    public WhatIf(Outlook outlook, Airframe airframe, EccentricSettings? found)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(airframe);
        (this.outlook, this.airframe) = (outlook, airframe);
        eccentric = Eccentric.On(airframe).Value;
        Loads = [new(Say.AsItIsRiggedFor, airframe.Reference.Load), .. PilotsCurrency.CommonLoads(airframe, Desk.Equivalents.PersonKg)];
        (LeftFound, RightFound) = (Standing(found?.LeftEccentricDeg), Standing(found?.RightEccentricDeg));
        Start = new(airframe.Reference.CasKt, 0, 0, LeftFound ?? 0, RightFound ?? 0);
    }

    /// <summary>Everything as it is, at the reference.</summary>
    public Supposition Start { get; }

    public IReadOnlyList<NamedLoad> Loads { get; }

    /// <summary>Degrees; null where it is not on record, differs front to rear, or has no data on file.</summary>
    public double? LeftFound { get; }

    public double? RightFound { get; }

    /// <summary>From a third above the stall to cruise; only the reference where no speeds are on file.</summary>
    public (double From, double To) SpeedsKt => airframe.SpeedsKt is { } limits
        ? (Math.Ceiling(1.3 * limits.StallClean), Math.Floor(limits.MaxStructuralCruise))
        : (airframe.Reference.CasKt, airframe.Reference.CasKt);

    /// <summary>The largest fuel difference that the fuel of the reference allows, litres; 0 without a tank beside the centreline.</summary>
    public double MostFuelL => airframe.Tanks.Where(tank => tank.ArmM != 0).ToArray() is { Length: > 0 } tanks
        ? Math.Floor(2 * tanks.Min(tank => Math.Min(InTank(tank), tank.CapacityL - InTank(tank))))
        : 0;

    public double StopDeg => eccentric is null ? 0 : Math.Min(eccentric.MaxAngle.Degrees, 90);

    /// <summary>Half the step that a wrench is asked for.</summary>
    public double StepDeg => eccentric is null ? 1 : eccentric.PerFlat.Degrees * (airframe.Limits?.IncidenceStepFlats ?? 0.5) / 2;

    public Estimate Expected(Supposition supposed)
    {
        ArgumentNullException.ThrowIfNull(supposed);
        var change = Change(RightFound, supposed.RightDeg) - Change(LeftFound, supposed.LeftDeg);
        return outlook.RollTendency(new(supposed.CasKt, Load(supposed), change));
    }

    /// <summary>At the reference, when one eccentric is turned from there to there; null when nothing can be foreseen of it.</summary>
    public Foreseen? After(Control control, double fromDeg, double toDeg) => control.IsEccentric()
        ? outlook.After(new SetTo(Enum.Parse<AdjustableControl>(control.ToString()), fromDeg, toDeg)).Value
        : null;

    Load Load(Supposition supposed)
    {
        var load = Loads[supposed.Aboard].Load;
        return load with { FuelL = airframe.Tanks.ToDictionary(tank => tank.Name, tank => InTank(tank) + Math.Sign(tank.ArmM) * supposed.FuelL / 2) };
    }

    double InTank(Tank tank) => airframe.Reference.Load.FuelL.GetValueOrDefault(tank.Name);

    double Change(double? fromDeg, double toDeg) => eccentric is null || fromDeg is not { } from ? 0
        : eccentric.IncidenceChange(Angle.FromDegrees(from), Angle.FromDegrees(toDeg)).Degrees;

    double? Standing(BushingAngles? angles) => eccentric is not null && angles is { } both && both.Front == both.Rear ? both.Front : null;
}
