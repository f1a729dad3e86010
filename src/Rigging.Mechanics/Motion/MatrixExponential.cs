using MathNet.Numerics.LinearAlgebra;

namespace Rigging.Mechanics.Motion;

/// <summary>exp(A) by scaling and squaring with a diagonal Padé approximant of order 6 (Moler and Van Loan, method 3).</summary>
static class MatrixExponential
{
    const int Order = 6;

    public static Matrix<double> Of(Matrix<double> matrix)
    {
        if (!double.IsFinite(matrix.InfinityNorm()))
            return Matrix<double>.Build.Dense(matrix.RowCount, matrix.ColumnCount, double.NaN);
        var squarings = Math.Max(0, (int)Math.Ceiling(Math.Log2(Math.Max(matrix.InfinityNorm(), double.Epsilon))) + 1);
        var scaled = matrix / Math.Pow(2, squarings);

        var identity = Matrix<double>.Build.DenseIdentity(matrix.RowCount);
        var (power, numerator, denominator) = (identity, identity.Clone(), identity.Clone());
        var coefficient = 1.0;
        for (var k = 1; k <= Order; k++)
        {
            coefficient *= (Order - k + 1) / (double)(k * (2 * Order - k + 1));
            power *= scaled;
            numerator += coefficient * power;
            denominator += (k % 2 == 0 ? coefficient : -coefficient) * power;
        }

        var result = denominator.Solve(numerator);
        for (var i = 0; i < squarings; i++)
            result *= result;
        return result;
    }
}
