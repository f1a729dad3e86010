using System.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Rigging.Mechanics.Motion;

/// <summary>
/// The natural motions by name, as eigenvalues in 1/s. A complex one is given with its positive imaginary part.
/// </summary>
/// <param name="Roll">The quick real root: how fast a roll rate settles.</param>
/// <param name="Spiral">The slow real root; positive when a bank grows by itself.</param>
/// <param name="DutchRoll">The oscillation in yaw and roll; real only on an aeroplane without one.</param>
public readonly record struct LateralModes(Complex Roll, Complex Spiral, Complex DutchRoll)
{
    /// <summary>
    /// Names the four roots: the pair with the highest frequency is the dutch roll, of the rest the larger is the roll.
    /// Where roll and spiral have merged into a slow pair, both carry it.
    /// </summary>
    public static LateralModes Of(Matrix<double> system)
    {
        var roots = system.Evd().EigenValues.OrderByDescending(root => Math.Abs(root.Imaginary)).ToArray();
        if (Math.Abs(roots[0].Imaginary) < 1e-9)
        {
            var real = roots.OrderByDescending(root => root.Magnitude).ToArray();
            return new(real[0], real[3], real[1]);
        }
        var rest = roots[2..].OrderByDescending(root => root.Magnitude).ToArray();
        return new(Upper(rest[0]), Upper(rest[1]), Upper(roots[0]));
    }

    static Complex Upper(Complex root) => new(root.Real, Math.Abs(root.Imaginary));
}
