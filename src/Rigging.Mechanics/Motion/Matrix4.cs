using System.Runtime.Intrinsics;
using MathNet.Numerics.LinearAlgebra;

namespace Rigging.Mechanics.Motion;

/// <summary>Four by four by rows, on the stack: what the lateral motion needs and no more.</summary>
readonly record struct Matrix4(Vector256<double> Row0, Vector256<double> Row1, Vector256<double> Row2, Vector256<double> Row3)
{
    public static Matrix4 Identity { get; } = new(Unit(0), Unit(1), Unit(2), Unit(3));

    /// <summary>Largest sum of sizes along a row.</summary>
    public double InfinityNorm => Math.Max(Math.Max(Size(Row0), Size(Row1)), Math.Max(Size(Row2), Size(Row3)));

    public Vector256<double> this[int row] => row switch { 0 => Row0, 1 => Row1, 2 => Row2, _ => Row3 };

    public static Matrix4 Of(Matrix<double> matrix)
    {
        Vector256<double> Row(int i) => Vector256.Create(matrix[i, 0], matrix[i, 1], matrix[i, 2], matrix[i, 3]);
        return new(Row(0), Row(1), Row(2), Row(3));
    }

    public static Vector256<double> Unit(int place) => Vector256<double>.Zero.WithElement(place, 1);

    public static Matrix4 operator +(in Matrix4 a, in Matrix4 b) => new(a.Row0 + b.Row0, a.Row1 + b.Row1, a.Row2 + b.Row2, a.Row3 + b.Row3);

    public static Matrix4 operator *(double times, in Matrix4 a) => new(times * a.Row0, times * a.Row1, times * a.Row2, times * a.Row3);

    public static Matrix4 operator *(in Matrix4 a, in Matrix4 b) => new(a.Row0 * b, a.Row1 * b, a.Row2 * b, a.Row3 * b);

    /// <summary>A row times the matrix.</summary>
    public static Vector256<double> operator *(Vector256<double> row, in Matrix4 b) =>
        row[0] * b.Row0 + row[1] * b.Row1 + row[2] * b.Row2 + row[3] * b.Row3;

    static double Size(Vector256<double> row) => Vector256.Sum(Vector256.Abs(row));
}
