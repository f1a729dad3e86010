namespace Rigging.Simulation;

/// <summary>Repeatable chance: the same seed, the same aeroplane and the same flights.</summary>
public sealed class Chance(int seed)
{
    readonly Random random = new(seed);

    public double Between(double from, double to) => from + (to - from) * random.NextDouble();

    public bool Once(double probability) => random.NextDouble() < probability;

    public double Sign() => Once(0.5) ? 1 : -1;

    public T Pick<T>(params IReadOnlyList<T> from) => from[random.Next(from.Count)];

    /// <summary>Standard normal by the polar-free Box and Muller form.</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>A factor about 1 with this deviation, cut at two and a half of them.</summary>
    public double Factor(double deviation)
    {
        var normal = Normal();
        while (Math.Abs(normal) > 2.5)
            normal = Normal();
        return 1 + deviation * normal;
    }
}
