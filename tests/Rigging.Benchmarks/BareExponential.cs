using MathNet.Numerics.LinearAlgebra;

namespace Rigging.Benchmarks;

/// <summary>
/// exp(A) of a 4 × 4 matrix by scaling, a diagonal Padé approximant of order 6, and squaring (Moler and Van Loan, method 3): once with
/// the matrices of the linear algebra library, once in plain loops on the stack, which is the harder yardstick.
/// </summary>
static class BareExponential
{
    const int Order = 6, N = 4;

    public static Matrix<double> Of(Matrix<double> matrix)
    {
        var squarings = Squarings(matrix.InfinityNorm());
        var scaled = matrix / Math.Pow(2, squarings);
        var identity = Matrix<double>.Build.DenseIdentity(N);
        var (power, numerator, denominator) = (identity, identity.Clone(), identity.Clone());
        foreach (var (coefficient, even) in Coefficients)
        {
            power *= scaled;
            numerator += coefficient * power;
            denominator += (even ? coefficient : -coefficient) * power;
        }
        var result = denominator.Solve(numerator);
        for (var i = 0; i < squarings; i++)
            result *= result;
        return result;
    }

    /// <summary>By rows, in place.</summary>
    public static void Of(ReadOnlySpan<double> matrix, Span<double> result)
    {
        var norm = 0.0;
        for (var i = 0; i < N; i++)
            norm = Math.Max(norm, Math.Abs(matrix[N * i]) + Math.Abs(matrix[N * i + 1]) + Math.Abs(matrix[N * i + 2]) + Math.Abs(matrix[N * i + 3]));
        var squarings = Squarings(norm);
        var scale = Math.Pow(2, -squarings);
        Span<double> scaled = stackalloc double[N * N], power = stackalloc double[N * N], denominator = stackalloc double[N * N], product = stackalloc double[N * N];
        power.Clear();
        denominator.Clear();
        result.Clear();
        for (var i = 0; i < N; i++)
            power[(N + 1) * i] = denominator[(N + 1) * i] = result[(N + 1) * i] = 1;
        for (var i = 0; i < N * N; i++)
            scaled[i] = matrix[i] * scale;
        foreach (var (coefficient, even) in Coefficients)
        {
            Multiply(power, scaled, product);
            product.CopyTo(power);
            for (var i = 0; i < N * N; i++)
            {
                result[i] += coefficient * power[i];
                denominator[i] += (even ? coefficient : -coefficient) * power[i];
            }
        }
        Divide(denominator, result);
        for (var i = 0; i < squarings; i++)
        {
            Multiply(result, result, product);
            product.CopyTo(result);
        }
    }

    static readonly (double Coefficient, bool Even)[] Coefficients = [.. Padé()];

    static IEnumerable<(double, bool)> Padé()
    {
        var coefficient = 1.0;
        for (var k = 1; k <= Order; k++)
        {
            coefficient *= (Order - k + 1) / (double)(k * (2 * Order - k + 1));
            yield return (coefficient, k % 2 == 0);
        }
    }

    static int Squarings(double norm) => Math.Max(0, Math.ILogB(norm) + 2);

    static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> product)
    {
        for (var i = 0; i < N; i++)
            for (var j = 0; j < N; j++)
                product[N * i + j] = a[N * i] * b[j] + a[N * i + 1] * b[N + j] + a[N * i + 2] * b[2 * N + j] + a[N * i + 3] * b[3 * N + j];
    }

    /// <summary>Gauss without pivots: the denominator is close to one.</summary>
    static void Divide(Span<double> denominator, Span<double> result)
    {
        for (var pivot = 0; pivot < N; pivot++)
        {
            var over = 1 / denominator[(N + 1) * pivot];
            for (var j = 0; j < N; j++)
            {
                denominator[N * pivot + j] *= over;
                result[N * pivot + j] *= over;
            }
            for (var i = 0; i < N; i++)
            {
                if (i == pivot)
                    continue;
                var times = denominator[N * i + pivot];
                for (var j = 0; j < N; j++)
                {
                    denominator[N * i + j] -= times * denominator[N * pivot + j];
                    result[N * i + j] -= times * result[N * pivot + j];
                }
            }
        }
    }
}
