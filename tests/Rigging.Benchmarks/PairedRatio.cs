using System.Diagnostics;
using System.Globalization;

namespace Rigging.Benchmarks;

/// <summary>
/// A ratio that another program on the same machine disturbs little: the yardstick and what is measured take turns in slices of some
/// milliseconds, each pair gives one ratio, and the middle of them counts.
/// </summary>
static class PairedRatio
{
    const int Pairs = 101;
    const double SliceMs = 4;

    public static void Print(string name, double goal, Func<object?> yardstick, Func<object?> measured)
    {
        var (ofYardstick, ofMeasured) = (TimesPerSlice(yardstick), TimesPerSlice(measured));
        var pairs = Enumerable.Range(0, Pairs)
            .Select(_ => (Yardstick: Microseconds(yardstick, ofYardstick), Measured: Microseconds(measured, ofMeasured)))
            .ToArray();
        double[] ratios = [.. pairs.Select(pair => pair.Measured / pair.Yardstick).Order()];
        var middle = ratios[Pairs / 2];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name,-34} {middle,6:0.00} ×  (middle half {ratios[Pairs / 4]:0.00} to {ratios[3 * Pairs / 4]:0.00})  goal {goal:0.0}  {(middle <= goal ? "met" : "NOT MET")}   yardstick {pairs.Select(pair => pair.Yardstick).Order().ElementAt(Pairs / 2):0.0} µs"));
    }

    static int TimesPerSlice(Func<object?> work)
    {
        // Long enough for the compiler to have done its best.
        for (var watch = Stopwatch.StartNew(); watch.ElapsedMilliseconds < 2000;)
            work();
        return Math.Max(1, (int)(SliceMs * 1000 / Microseconds(work, 20)));
    }

    static double Microseconds(Func<object?> work, int times)
    {
        var watch = Stopwatch.StartNew();
        for (var i = 0; i < times; i++)
            work();
        return watch.Elapsed.TotalMicroseconds / times;
    }
}
