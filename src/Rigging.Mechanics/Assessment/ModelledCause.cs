using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>One flight as far as a cause's trace in it goes.</summary>
/// <param name="FlapLowered">Then a difference at the up stop no longer acts; the one at that setting does.</param>
/// <param name="LastInput">Side the wheel was last moved to; null when nobody knows.</param>
readonly record struct FlightCase(FlightPoint Flight, Load Load, bool FlapLowered, Side? LastInput)
{
    /// <summary>Where the roll tendency is judged: at the reference, loaded as it is rigged for.</summary>
    public static FlightCase AtReference(Aeroplane aeroplane) => new(aeroplane.Reference, aeroplane.Airframe.Reference.Load, FlapLowered: false, LastInput: null);
}

/// <summary>One amplitude of a cause: what one unit of it amounts to in flight.</summary>
/// <param name="SpreadShare">Its spread as a share of the cause's.</param>
/// <param name="PerUnit">The asymmetry of one unit.</param>
sealed record Trace(Cause Cause, double SpreadShare, Func<FlightCase, Asymmetry> PerUnit);

/// <summary>A cause of the catalogue as the motion model follows it.</summary>
/// <param name="First">Place of its amplitude in <see cref="Traces"/>; a second trace follows it.</param>
/// <param name="MeasuredBy">The ground check whose value is the amplitude; null when none is.</param>
/// <param name="BelongsToAircraft">False for what is different on the next flight, such as fuel.</param>
sealed record ModelledCause(Cause Cause, int First, int Count, GroundCheckKind? MeasuredBy, bool BelongsToAircraft)
{
    const double RadPerDeg = Math.PI / 180;

    /// <summary>The whole catalogue, in its order.</summary>
    public static IReadOnlyList<ModelledCause> All { get; }

    /// <summary>Every amplitude there is; the traces of one cause stand together.</summary>
    public static IReadOnlyList<Trace> Traces { get; } =
    [
        new(Cause.FuelAndLoading, 1, at => new(WeightNm: LateralLoad.MomentPerLitreNm(at.Flight.Airframe, at.Load.FuelKgPerL))),
        new(Cause.PanelIncidenceDifference, 1, at => RadPerDeg * at.Flight.PanelIncidence),
        new(Cause.TipIncidenceDifference, 1, at => RadPerDeg * at.Flight.TipIncidence),
        new(Cause.FlapDifference, 1, at => at.FlapLowered ? default : RadPerDeg * at.Flight.FlapDifference),
        // Lowered, the flaps hang on rods and tracks instead of their stops: an amplitude of its own.
        new(Cause.FlapDifference, 1, at => at.FlapLowered ? RadPerDeg * at.Flight.FlapDifference : default),
        new(Cause.ContourOrFairing, 1, at => at.Flight.LiftDifference),
        // A skin rolls; a crooked wheel or strut fairing pulls its side back as well.
        new(Cause.ContourOrFairing, 0.5, _ => new(Yawing: 1)),
        new(Cause.AileronFloat, 1, _ => new(AileronFloatRad: RadPerDeg)),
        new(Cause.AileronNeutralOffset, 1, _ => new(AileronNeutralRad: RadPerDeg)),
        new(Cause.RudderOrFinOffset, 1, _ => new(RudderOffsetRad: RadPerDeg)),
        new(Cause.Slipstream, 1, at => at.Flight.Slipstream),
        new(Cause.ControlFriction, 1, at => at.LastInput is { } side ? Stuck(at.Flight, side) : default),
        new(Cause.InstrumentMisalignment, 1, _ => new(BallOffsetWidths: 1)),
        // What was bent or put together wrong may roll, yaw or both; a bent panel also shows when incidence is measured.
        new(Cause.DamageOrMisassembly, 1, at => at.Flight.LiftDifference),
        new(Cause.DamageOrMisassembly, 0.5, _ => new(Yawing: 1)),
        new(Cause.DamageOrMisassembly, 0.5, _ => new(Rolling: 1)),
    ];

    static ModelledCause()
    {
        var all = new List<ModelledCause>();
        for (var at = 0; at < Traces.Count; at++)
            if (at == 0 || Traces[at].Cause != Traces[at - 1].Cause)
                all.Add(new(Traces[at].Cause, at, Traces.Count(trace => trace.Cause == Traces[at].Cause), Measuring(Traces[at].Cause), Traces[at].Cause != Cause.FuelAndLoading));
        All = all;
    }

    /// <summary>The cause as it stands in <see cref="All"/>, which has the order of the catalogue.</summary>
    public static ModelledCause Of(Cause cause) => All[(int)cause];

    /// <summary>Roll tendency for one unit of each amplitude, °/s; zero for what is not the aircraft's own or not the ball in the middle.</summary>
    public static double[] TendencyGains(FlightCase at) => [.. OfTendency(at).Select(asymmetry => asymmetry == default ? 0 : at.Flight.RollTendencyDegPerS(asymmetry))];

    /// <summary>The asymmetry that one unit of each amplitude is to the tendency.</summary>
    public static IReadOnlyList<Asymmetry> OfTendency(FlightCase at) =>
        [.. Traces.Select(trace => trace.Cause is Cause.FuelAndLoading or Cause.InstrumentMisalignment ? default : trace.PerUnit(at))];

    /// <summary>Which way friction left the ailerons, for one newton at the rim: to the side of the last input.</summary>
    public static Asymmetry Stuck(FlightPoint flight, Side side)
    {
        var newtonPerDeg = flight.Airframe.Ailerons.WheelForceNPerAileronDegAtReference * flight.PressureRatio;
        return newtonPerDeg > 0 ? new(AileronFloatRad: (side == Side.Right ? RadPerDeg : -RadPerDeg) / newtonPerDeg) : default;
    }

    static GroundCheckKind? Measuring(Cause cause) => cause switch
    {
        Cause.PanelIncidenceDifference => GroundCheckKind.PanelIncidenceDifference,
        Cause.TipIncidenceDifference => GroundCheckKind.TipIncidenceDifference,
        Cause.FlapDifference => GroundCheckKind.FlapDifference,
        Cause.AileronFloat => GroundCheckKind.AileronFloat,
        Cause.AileronNeutralOffset => GroundCheckKind.AileronNeutralOffset,
        Cause.ControlFriction => GroundCheckKind.ControlFriction,
        Cause.InstrumentMisalignment => GroundCheckKind.BallOffset,
        _ => null,
    };
}
