namespace Rigging.Mechanics.Wing;

/// <summary>A coefficient with what the grid leaves open.</summary>
/// <param name="Value">On the fine grid.</param>
/// <param name="GridError">Estimate of what an endlessly fine grid would add or take, 0 or more.</param>
/// <param name="LiftingLine">The same from the lifting line, for comparison; higher, because it has no chord.</param>
public sealed record GridChecked(double Value, double GridError, double LiftingLine)
{
    public double GridErrorPercent => 100 * GridError / Math.Abs(Value);
}

/// <summary>
/// One wing on a grid and on two coarser ones, with half and three quarters of the strips, and as a lifting line. The estimate is the larger of
/// both differences: the ends of a flap fall between strips, and one coarser grid may agree with the fine one by luck.
/// </summary>
public sealed class CoarserGrids
{
    readonly VortexLattice fine;
    readonly VortexLattice[] coarser;
    readonly LiftingLine line;

    public CoarserGrids(Planform wing, int strips = 40, int rows = 2) : this(new VortexLattice(wing, strips, rows)) { }

    /// <summary>Beside a lattice of at least 8 strips that is solved already.</summary>
    public CoarserGrids(VortexLattice fine)
    {
        var strips = fine.Strips.Length;
        ArgumentOutOfRangeException.ThrowIfLessThan(strips, 8);
        this.fine = fine;
        coarser = [new(fine.Wing, strips / 4 * 2, fine.Rows), new(fine.Wing, 3 * strips / 8 * 2, fine.Rows)];
        line = new(fine.Wing, strips - 1);
    }

    public GridChecked LiftOf(IncidenceShape shape) =>
        Checked(lattice => lattice.Response(shape).LiftCoefficient, line.Response(shape).LiftCoefficient);

    /// <summary>Right wing down positive.</summary>
    public GridChecked RollingMomentOf(IncidenceShape shape) =>
        Checked(lattice => lattice.Response(shape).RollingMomentCoefficient, line.Response(shape).RollingMomentCoefficient);

    GridChecked Checked(Func<VortexLattice, double> coefficient, double ofLine)
    {
        var value = coefficient(fine);
        return new(value, coarser.Max(lattice => Math.Abs(coefficient(lattice) - value)), ofLine);
    }
}
