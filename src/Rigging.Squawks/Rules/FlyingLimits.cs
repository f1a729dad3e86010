using Rigging.Mechanics.Contract;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Squawks.Rules;

/// <summary>What an aircraft can fly and hold: a reading beyond it is a slip of the pen, and is refused when it is entered, wherever that is.</summary>
public static class FlyingLimits
{
    /// <summary>Beyond it 14 CFR 91.307(c) asks for parachutes (from memory): nobody lets a wing drop so far to read a stopwatch.</summary>
    public const double MostBankDeg = 60;

    /// <summary>What was given, and what was wanted instead.</summary>
    internal sealed record Beyond(string Seen, string Wanted);

    /// <summary>Null where it is possible, where nothing was read, and where no speeds are on file.</summary>
    internal static Beyond? Speed(double? casKt, double? flapDeg, Airframe? airframe)
    {
        if (casKt is not { } kt || airframe?.SpeedsKt is not { } speeds) return null;
        // With flap it stalls slower than any speed on file.
        if (flapDeg is > 0 and var flap)
            return kt > speeds.FlapLimit ? new($"{Kt(kt)} with {Words.Number(flap)}° of flap", $"at most {Kt(speeds.FlapLimit)}, the speed with flap down") : null;
        return kt < speeds.StallClean || kt > speeds.NeverExceed
            ? new(Kt(kt), $"{Kt(speeds.StallClean)}, where it stalls, to {Kt(speeds.NeverExceed)}, which it never exceeds")
            : null;
    }

    internal static Beyond? Bank(double? deg) =>
        deg is { } bank && !(Math.Abs(bank) <= MostBankDeg) ? new($"{Words.Number(bank)}°", $"at most {Words.Number(MostBankDeg)}° either way") : null;

    /// <param name="left">The left tanks, or the right ones.</param>
    internal static Beyond? Fuel(double? litres, bool left, Airframe? airframe)
    {
        if (litres is not { } given || airframe is null) return null;
        var held = airframe.TanksHoldL(left ? Side.Left : Side.Right);
        return given > held ? new($"{Words.Number(given)}{Space}L", $"at most {Words.Number(held)}{Space}L, which the tank holds") : null;
    }

    static string Kt(double kt) => $"{Words.Number(kt)}{Space}kt";
}
