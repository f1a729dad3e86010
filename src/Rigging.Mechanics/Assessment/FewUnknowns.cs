namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Cholesky for a handful of unknowns, rows one after another in plain arrays: hundreds of such systems are solved in an assessment, and a
/// general library spends most of its time on setting up.
/// </summary>
static class FewUnknowns
{
    /// <summary>A pivot that rounding brought to nothing counts as this.</summary>
    const double LeastPivot = 1e-300;

    /// <summary>Factorises a symmetric positive definite matrix in place; its lower triangle then holds the factor. Returns the log of the determinant.</summary>
    public static double Factorise(double[] matrix, int size)
    {
        var log = 0.0;
        for (var j = 0; j < size; j++)
        {
            for (var i = j; i < size; i++)
            {
                var sum = matrix[i * size + j];
                for (var k = 0; k < j; k++)
                    sum -= matrix[i * size + k] * matrix[j * size + k];
                matrix[i * size + j] = i == j ? Math.Sqrt(Math.Max(sum, LeastPivot)) : sum / matrix[j * size + j];
            }
            log += 2 * Math.Log(matrix[j * size + j]);
        }
        return log;
    }

    /// <summary>Solves in place for a right-hand side.</summary>
    public static void Solve(double[] factor, int size, Span<double> side)
    {
        for (var i = 0; i < size; i++)
        {
            for (var k = 0; k < i; k++)
                side[i] -= factor[i * size + k] * side[k];
            side[i] /= factor[i * size + i];
        }
        for (var i = size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < size; k++)
                side[i] -= factor[k * size + i] * side[k];
            side[i] /= factor[i * size + i];
        }
    }

    /// <summary>The inverse, which is symmetric.</summary>
    public static void Invert(double[] factor, int size, double[] inverse)
    {
        Array.Clear(inverse);
        for (var i = 0; i < size; i++)
        {
            inverse[i * size + i] = 1;
            Solve(factor, size, inverse.AsSpan(i * size, size));
        }
    }
}
