using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Motion;

/// <summary>What the pilot would read off during a manoeuvre, in the reading's own unit; linear in the asymmetry.</summary>
public static class PilotReading
{
    /// <summary>
    /// A roll rate is read this long after the release: the roll has settled (its time constant is a tenth to a third of
    /// a second) and the bank has not yet brought much sideslip.
    /// </summary>
    public const double SettledSeconds = 2;

    const double DegPerRad = 180 / Math.PI;

    /// <summary>
    /// Null when this manoeuvre cannot show such a reading. A <see cref="TimeToBank"/> is predicted as the bank at the
    /// time that was stopped, in degrees: unlike the time itself it is linear.
    /// </summary>
    public static double? Predict(FlightPoint point, Manoeuvre manoeuvre, Reading reading, Asymmetry asymmetry) =>
        manoeuvre switch
        {
            Manoeuvre.ReleaseAll => Released(point, point.Held.Level(asymmetry), asymmetry.AileronFloatRad, reading, asymmetry),
            Manoeuvre.ReleaseWheel => Released(point, point.Held.Straight(asymmetry), asymmetry.AileronFloatRad, reading, asymmetry),
            Manoeuvre.HoldNeutral => Released(point, point.Held.Straight(asymmetry), asymmetry.AileronNeutralRad, reading, asymmetry),
            Manoeuvre.HoldLevel => Held(point, point.Held.Level(asymmetry), reading, asymmetry),
            Manoeuvre.HoldStraight => Held(point, point.Held.Straight(asymmetry), reading, asymmetry),
            Manoeuvre.BalanceFuel => reading is FuelDifference ? Balance(point, asymmetry) : null,
            _ => null,
        };

    /// <summary>Readings of a motion after the release; a reading of the held controls is the one just before it.</summary>
    static double? Released(FlightPoint point, HeldState from, double aileronRad, Reading reading, Asymmetry asymmetry)
    {
        ReleasedMotion After(double seconds) => point.Release.After(seconds, from, aileronRad, asymmetry);
        return reading switch
        {
            BankAfter bank => After(bank.Seconds).BankRad * DegPerRad,
            TimeToBank time => After(time.Seconds).BankRad * DegPerRad,
            RollRate or Rolls => After(SettledSeconds).RollRateRadPerS * DegPerRad,
            HeadingRate => After(SettledSeconds).YawRateRadPerS * DegPerRad,
            HeadingChange heading => After(heading.Seconds).HeadingChangeRad * DegPerRad,
            _ => Held(point, from, reading, asymmetry),
        };
    }

    static double? Held(FlightPoint point, HeldState state, Reading reading, Asymmetry asymmetry)
    {
        var ailerons = point.Airframe.Ailerons;
        return reading switch
        {
            BallReading => point.Held.BallWidths(state, asymmetry),
            HeadingRate => state.YawRateRadPerS * DegPerRad,
            HeadingChange heading => state.YawRateRadPerS * heading.Seconds * DegPerRad,
            WheelAngle => ailerons.WheelDegPerAileronDeg * (state.AileronRad - asymmetry.AileronNeutralRad) * DegPerRad,
            WheelForce => ailerons.WheelForceNPerAileronDegAtReference * point.PressureRatio
                * (state.AileronRad - asymmetry.AileronFloatRad) * DegPerRad,
            _ => null,
        };
    }

    /// <summary>
    /// Litres, right minus left, at which it flies level hands off: the difference that takes away the tendency of
    /// everything else. <paramref name="asymmetry"/> is all but the fuel that was burned to balance. Null when the
    /// airframe has no tanks off the centreline.
    /// </summary>
    static double? Balance(FlightPoint point, Asymmetry asymmetry)
    {
        var perLitreNm = point.FuelMomentPerLitreNm;
        if (perLitreNm <= 0)
            return null;
        return -point.RollTendencyDegPerS(asymmetry) / point.RollTendencyDegPerS(new(WeightNm: perLitreNm));
    }
}
