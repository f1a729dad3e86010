using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Fastening;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Fastening;

/// <summary>Targets and wrenches to try.</summary>
static class Hardware
{
    public static readonly DateOnly Day = new(2026, 4, 17);

    public static Torque InLb(double value) => Torque.FromPoundForceInches(value);

    public static Length In(double value) => Length.FromInches(value);

    public static TorqueTarget Manual(double least, double greatest, bool includesPrevailing = false, Lubrication lubrication = Lubrication.Dry, TurnedPart turned = TurnedPart.Nut) =>
        TorqueTarget.FromManual("Manual 57-10, revision C", InLb(least), InLb(greatest), includesPrevailing, lubrication, turned).Value!;

    public static FinalTorque Final(double least, double greatest) => FinalTorque.For(Manual(least, greatest), Lubrication.Dry, TurnedPart.Nut, RunOn(0)).Value!;

    public static RunOn RunOn(double inLb, TurnedPart turned = TurnedPart.Nut) => new(InLb(inLb), turned);

    public static TorqueWrench Wrench(double leverIn = 10, double fullScaleInLb = 250) =>
        new("TW-1", In(leverIn), InLb(fullScaleInLb), null, new(2025, 9, 1), new(2026, 9, 1));

    public static Extension Extension(double inches, double deg) => new(In(inches), Angle.FromDegrees(deg));

    public static string[] Codes(IEnumerable<Refusal> refusals) => [.. refusals.Select(refusal => refusal.Code)];
}
