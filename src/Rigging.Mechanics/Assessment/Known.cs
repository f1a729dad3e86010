using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>What an estimate lets anybody say: never more than its 90 % interval holds.</summary>
public enum Known
{
    /// <summary>The interval reaches too far both ways: neither a side nor "level" may be said.</summary>
    NotWhichWay,

    /// <summary>All of it lies on the negative side: left, left wing down.</summary>
    Negative,

    /// <summary>All of it lies on the positive side: right, right wing down.</summary>
    Positive,

    /// <summary>All of it is too little to be noticed.</summary>
    Nothing,

    /// <summary>Which way is not known, and either way it stays inside the limit.</summary>
    InsideLimit,
}

/// <summary>The one place that decides which words an estimate may be given, for screens, paper, ledger and interface.</summary>
public static class WhatIsKnown
{
    /// <summary>°/s; slower than this nobody feels it: half a degree in ten seconds.</summary>
    public const double UnfeltDegPerS = 0.05;

    /// <param name="unnoticed">So little either way is none.</param>
    /// <param name="limit">What is acceptable either way; null where there is none.</param>
    public static Known Of(double low, double high, double unnoticed = 0, double? limit = null) =>
        !(low <= high) ? Known.NotWhichWay
        : -unnoticed <= low && high <= unnoticed ? Known.Nothing
        : low >= 0 ? Known.Positive
        : high <= 0 ? Known.Negative
        : limit is { } acceptable && -acceptable <= low && high <= acceptable ? Known.InsideLimit
        : Known.NotWhichWay;

    /// <summary>Of a roll tendency.</summary>
    public static Known OfRoll(this Estimate tendency, double? limitDegPerS = null)
    {
        ArgumentNullException.ThrowIfNull(tendency);
        return Of(tendency.Low, tendency.High, UnfeltDegPerS, limitDegPerS);
    }

    /// <summary>A side, and only that, may be said.</summary>
    public static bool HasSide(this Known known) => known is Known.Negative or Known.Positive;
}
