using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation.Motion;

/// <summary>Roll, spiral and Dutch roll at the reference: the roots of the equations, 1/s.</summary>
public static class Modes
{
    public static IReadOnlyList<Complex> Of(Aeroplane aeroplane)
    {
        var file = aeroplane.File;
        var flight = new Flight(aeroplane, new(
            TestPoint.ReleaseWheel, file.ReferenceKt, file.ReferenceFt, Flow.StandardC(file.ReferenceFt), file.ReferencePower, Load.Of(file.ReferenceLoad)));
        return [.. Matrix<double>.Build.DenseOfColumns(flight.Columns()).Evd().EigenValues];
    }
}
