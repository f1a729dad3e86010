namespace Rigging.Mechanics.Contract;

/// <summary>Reads one ground check; its kind says which fields it has.</summary>
static class GroundCheckReader
{
    /// <summary>A standard deviation is never 0: nothing is measured without error.</summary>
    public static readonly Within Sd = new(0.0001, 1000);

    static readonly Within Deg = new(-ReadingLimits.GroundDeg, ReadingLimits.GroundDeg, "°");
    static readonly Within ForceN = new(0, ReadingLimits.GroundForceN, "N");

    public static GroundCheck Read(FieldReader check)
    {
        var kind = check.Word<GroundCheckKind>("kind");
        switch (kind)
        {
            case GroundCheckKind.AileronTab:
                return new AileronTabCheck(check.Word<Side>("side") ?? default, check.Number("deg", Deg), SdDeg(check));
            case GroundCheckKind.CableTension:
                return new CableTensionCheck(check.Text("cable", 60), check.Number("n", ForceN), check.Number("degC", new(-60, 60, "°C")), SdOf(check));
            case GroundCheckKind.BallOffset:
                return new BallOffsetCheck(check.Number("widths", new(-ReadingLimits.BallWidths, ReadingLimits.BallWidths, "ball widths")), SdOf(check));
            case GroundCheckKind.ControlFriction:
                return new ControlFrictionCheck(check.Number("n", ForceN), SdOf(check));
            case GroundCheckKind.DamageInspection or GroundCheckKind.ContourSurvey:
                return new ClearanceCheck(kind.Value, check.Flag("clear"));
            case { } angle:
                return new AngleCheck(angle, check.Number("deg", Deg), SdDeg(check));
            default:
                check.AllowTheRest();
                return new ClearanceCheck(default, false);
        }
    }

    static double? SdOf(FieldReader check) => check.NumberIfGiven("sd", Sd);

    /// <summary>Either name is the contract's: <c>sd</c> everywhere, <c>sdDeg</c> where the value is in <c>deg</c>.</summary>
    static double? SdDeg(FieldReader check)
    {
        var (sd, sdDeg) = (SdOf(check), check.NumberIfGiven("sdDeg", Sd));
        if (sd is not null && sdDeg is not null)
            check.Refuse("sd", "sd or sdDeg, not both");
        return sdDeg ?? sd;
    }
}
