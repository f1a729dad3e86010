using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>The pilot's report in words: the complaint in one sentence, and everything that was and was not written down.</summary>
static class ReportStory
{
    public static Told Of(Reported report) => new("Reported",
    [
        new(report.Words, Tone.Quoted),
        .. RedFlags(report),
        $"{Sentence(report)}.",
        .. Conditions(report),
        .. Readings(report),
        Fuel(report),
        .. Seats(report),
        .. History(report),
        .. Missing(report),
    ], [.. (report.Photos ?? []).Select(photo => photo.Sha256)]);

    /// <summary>What is wrong, in one sentence without its full stop.</summary>
    public static string Sentence(Reported report) => string.Join(", ", ((string?[])
    [
        report.RollsTo switch
        {
            Side.Left or Side.Right => $"Rolls {Words.Of(report.RollsTo)}{(report.Strength == RollStrength.NotRecorded ? "" : $" {Words.Of(report.Strength)}")}",
            Side.None => "Does not roll by itself",
            _ => "Does not fly straight; which way it rolls was not recorded",
        },
        report.Hands == Hands.NotRecorded ? null : Words.Of(report.Hands),
        report.Feet == Feet.NotRecorded ? null : Words.Of(report.Feet),
    ]).OfType<string>());

    /// <summary>The bank and the seconds it took; null when not recorded.</summary>
    public static string? BankRead(Reported report) =>
        report is { BankDeg: { } bank, BankAfterS: { } seconds } ? $"{Bank(bank)} after {Words.Number(seconds, 1)}{Space}s" : null;

    static IEnumerable<Line> RedFlags(Reported report)
    {
        if (report.RedFlags.Count > 0)
            yield return new($"Red flags: {string.Join("; ", report.RedFlags.Select(Words.Of))}. Grounded until a damage inspection clears it.", Tone.Stop);
    }

    static IEnumerable<Line> Conditions(Reported report)
    {
        string?[] known =
        [
            report.CasKt is { } kt ? $"{Words.Number(kt, 0)}{Space}kt" : null,
            report.PressureAltitudeFt is { } ft ? $"{Words.Number(ft, 0)}{Space}ft" : null,
            report.PowerPercent is { } power ? $"power {Words.Number(power, 0)}{Space}%" : null,
            report.FlapDeg is { } flap ? $"flap {Words.Number(flap, 0)}°" : null,
        ];
        if (known.OfType<string>().ToList() is { Count: > 0 } said) yield return $"At {string.Join(", ", said)}.";
        if (!string.IsNullOrWhiteSpace(report.AsSet)) yield return $"As set: {report.AsSet}";
    }

    static IEnumerable<Line> Readings(Reported report)
    {
        string?[] read =
        [
            BankRead(report),
            report.BallWidths is { } ball ? $"ball {Ball(ball)}" : null,
        ];
        if (read.OfType<string>().ToList() is { Count: > 0 } said) yield return $"Read: {string.Join("; ", said)}.";
    }

    static Line Fuel(Reported report) => report is { FuelLeftL: { } left, FuelRightL: { } right }
        ? $"Fuel left {Litres(left)}, right {Litres(right)}, {(report.FuelMethod == FuelMethod.NotKnown ? "how it was known is not recorded" : Words.Of(report.FuelMethod))}."
        : new Line("Fuel on each side: not known.", Tone.Missing);

    static IEnumerable<Line> Seats(Reported report)
    {
        if (report.Aboard is { } aboard) yield return $"Aboard: {Words.Of(aboard)}.";
        if (report.SeatLeftKg is null && report.SeatRightKg is null) yield break;
        yield return $"Left seat {Kilograms(report.SeatLeftKg)}, right seat {Kilograms(report.SeatRightKg)}.";
    }

    static string Kilograms(double? kg) => kg is { } known ? $"{Words.Number(known, 0)}{Space}kg" : "not recorded";

    static IEnumerable<Line> History(Reported report)
    {
        if (!string.IsNullOrWhiteSpace(report.SinceWhen)) yield return $"Since: {report.SinceWhen}";
        if (report.StraightBefore is { } straight) yield return straight ? "It flew straight before." : "It did not fly straight before either.";
        if (report.Happened.Count > 0) yield return $"Since it last flew straight: {string.Join("; ", report.Happened.Select(Words.Of))}.";
        if (!string.IsNullOrWhiteSpace(report.LastWork)) yield return $"Done last: {report.LastWork}";
    }

    static IEnumerable<Line> Missing(Reported report)
    {
        string?[] missing =
        [
            report.Strength == RollStrength.NotRecorded && report.RollsTo is Side.Left or Side.Right ? "how fast" : null,
            report.Hands == Hands.NotRecorded ? "hands" : null,
            report.Feet == Feet.NotRecorded ? "feet" : null,
            report.CasKt is null ? "speed" : null,
            report.PressureAltitudeFt is null ? "altitude" : null,
            report.PowerPercent is null ? "power" : null,
            report.FlapDeg is null ? "flap" : null,
            report.BallWidths is null ? "ball" : null,
            report.BankDeg is null ? "bank and seconds" : null,
            report is { SeatLeftKg: null, SeatRightKg: null, Aboard: null } ? "seats" : null,
            string.IsNullOrWhiteSpace(report.SinceWhen) ? "since when" : null,
            report.StraightBefore is null ? "whether it flew straight before" : null,
        ];
        if (missing.OfType<string>().ToList() is { Count: > 0 } said) yield return new($"Not recorded: {string.Join(", ", said)}.", Tone.Missing);
    }
}
