using Rigging.Mechanics.Cables;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>Fore and aft, as a tip moves when its wing is swept.</summary>
public enum SweepWay { Forward, Aft }

/// <summary>What a turn does besides changing the incidence.</summary>
/// <param name="AlongSpan">The rear spar's end moves so far along the span, 0 or more.</param>
/// <param name="Goes">Which way; null when the bushing's data are not on file, or when it does not move.</param>
/// <param name="Sweep">The panel turns about its front fitting by so much, 0 or more.</param>
/// <param name="TipMoves">Fore or aft, 0 or more.</param>
/// <param name="TipGoes">Outboard at the rear spar pushes the tip forward; null as for <paramref name="Goes"/>.</param>
/// <remarks>
/// Plane geometry: e·|cos θ₁ − cos θ₂| along the span, atan of that over the spar spacing as sweep. A cable led along the rear spar becomes
/// longer or shorter by at most as much.
/// </remarks>
public sealed record EccentricSideEffects(Length AlongSpan, Spanwise? Goes, Angle Sweep, Length TipMoves, SweepWay? TipGoes)
{
    public static EccentricSideEffects Of(EccentricMove move, WingGeometry wing)
    {
        ArgumentNullException.ThrowIfNull(move);
        ArgumentNullException.ThrowIfNull(wing);
        var eccentric = move.Eccentric;
        var change = eccentric.SpanwiseMoveAt(move.To) - eccentric.SpanwiseMoveAt(move.From);
        var still = change.Abs() < Length.FromMicrometers(1);
        // Away from neutral it goes the way that leaves the neutral offset; back towards neutral, the other.
        Spanwise? goes = still || eccentric.SpanwiseDirection(move.Wing) is not { } away ? null
            : change.Meters > 0 == (away == Spanwise.Outboard) ? Spanwise.Outboard : Spanwise.Inboard;
        var sweepRad = Math.Atan(change.Abs() / eccentric.SparSpacing);
        return new(
            change.Abs(), goes, Angle.FromRadians(sweepRad),
            Length.FromMeters((wing.SpanM / 2 - wing.PanelInboardYM) * Math.Sin(sweepRad)),
            goes is { } way ? (way == Spanwise.Outboard ? SweepWay.Forward : SweepWay.Aft) : null);
    }

    /// <summary>At most so much tension more or less in a cable led along the rear spar.</summary>
    public Force TensionAtMost(CableExpansion cable, Length run)
    {
        ArgumentNullException.ThrowIfNull(cable);
        return cable.GainedBy(AlongSpan, run);
    }
}
