using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>The pilot's report in words: the complaint in one sentence, and everything that was and was not written down.</summary>
static class ReportStory
{
    public static Told Of(Reported report) => new(Texts.Reported,
    [
        .. Line.Quote(report.Words),
        .. RedFlags(report),
        $"{Sentence(report)}.",
        .. Conditions(report),
        .. Readings(report),
        Fuel(report),
        .. Seats(report),
        .. History(report),
        .. Missing(report),
        .. (report.Unread ?? []).Select(typed => new Line(Gaps.Fill(Say.TypedAndNotRead, typed), Tone.Missing)),
    ], [.. (report.Photos ?? []).Select(photo => photo.Sha256)]);

    /// <summary>What is wrong, in one sentence without its full stop.</summary>
    public static string Sentence(Reported report) => string.Join(", ", ((string?[])
    [
        report.RollsTo switch
        {
            Side.Left or Side.Right => Gaps.Fill(Say.Rolls, Words.Of(report.RollsTo), report.Strength == RollStrength.NotRecorded ? "" : $" {Words.Of(report.Strength)}"),
            Side.None => Say.DoesNotRollByItself,
            _ when GroundingQuestions.Grounds(report) => Words.Capital(string.Join("; ", GroundingQuestions.Raised(report.RedFlags, report.Happened))),
            _ => Say.DoesNotFlyStraight,
        },
        report.Hands == Hands.NotRecorded ? null : Words.Of(report.Hands),
        report.Feet == Feet.NotRecorded ? null : Words.Of(report.Feet),
    ]).OfType<string>());

    /// <summary>The bank and the seconds it took; null when not recorded.</summary>
    public static string? BankRead(Reported report) =>
        report is { BankDeg: { } bank, BankAfterS: { } seconds } ? Gaps.Fill(Say.AfterS, Bank(bank), Words.Number(seconds, 1)) : null;

    static IEnumerable<Line> RedFlags(Reported report)
    {
        if (GroundingQuestions.Raised(report.RedFlags, report.Happened).ToList() is { Count: > 0 } raised)
            yield return new(Gaps.Fill(Say.RedFlagsGroundedUntil, string.Join("; ", raised)), Tone.Stop);
    }

    static IEnumerable<Line> Conditions(Reported report)
    {
        string?[] known =
        [
            report.CasKt is { } kt ? $"{Words.Number(kt, 0)}{Space}kt" : null,
            report.PressureAltitudeFt is { } ft ? $"{Words.Number(ft, 0)}{Space}ft" : null,
            report.PowerPercent is { } power ? Gaps.Fill(Say.PowerInText, Words.Number(power, 0)) : null,
            report.FlapDeg is { } flap ? Gaps.Fill(Say.FlapInText, Words.Number(flap, 0)) : null,
        ];
        if (known.OfType<string>().ToList() is { Count: > 0 } said) yield return $"At {string.Join(", ", said)}.";
        if (!string.IsNullOrWhiteSpace(report.AsSet)) yield return Gaps.Fill(Say.AsSet, report.AsSet);
    }

    static IEnumerable<Line> Readings(Reported report)
    {
        string?[] read =
        [
            BankRead(report),
            report.BallWidths is { } ball ? Gaps.Fill(Say.BallInText, Ball(ball)) : null,
        ];
        if (read.OfType<string>().ToList() is { Count: > 0 } said) yield return Gaps.Fill(Say.Read, string.Join("; ", said));
    }

    static Line Fuel(Reported report) => report is { FuelLeftL: { } left, FuelRightL: { } right }
        ? Gaps.Fill(Say.FuelLeftRight, Litres(left), Litres(right), report.FuelMethod == FuelMethod.NotKnown ? Say.HowItWasKnownIsNotRecorded : Words.Of(report.FuelMethod))
        : new Line(Say.FuelOnEachSideNot, Tone.Missing);

    static IEnumerable<Line> Seats(Reported report)
    {
        if (report.Aboard is { } aboard) yield return Gaps.Fill(Say.Aboard, Words.Of(aboard));
        if (report.SeatLeftKg is null && report.SeatRightKg is null) yield break;
        yield return Gaps.Fill(Say.LeftSeatRightSeat, Kilograms(report.SeatLeftKg), Kilograms(report.SeatRightKg));
    }

    static string Kilograms(double? kg) => kg is { } known ? $"{Words.Number(known, 0)}{Space}kg" : Say.NotRecordedInText;

    static IEnumerable<Line> History(Reported report)
    {
        if (!string.IsNullOrWhiteSpace(report.SinceWhen)) yield return Gaps.Fill(Say.Since, report.SinceWhen);
        if (report.StraightBefore is { } straight) yield return straight ? Say.ItFlewStraightBefore : Say.ItDidNotFlyStraight;
        if (report.Happened.Count > 0) yield return Gaps.Fill(Say.SinceItLastFlewStraight, string.Join("; ", report.Happened.Select(Words.Of)));
        if (report.WithoutEffect is { Count: > 0 } tried) yield return Gaps.Fill(Say.ChangedWithoutEffect, string.Join("; ", tried.Select(Words.Of)));
        if (!string.IsNullOrWhiteSpace(report.LastWork)) yield return Gaps.Fill(Say.DoneLast, report.LastWork);
    }

    static IEnumerable<Line> Missing(Reported report)
    {
        string?[] missing =
        [
            report.Strength == RollStrength.NotRecorded && report.RollsTo is Side.Left or Side.Right ? Say.HowFast : null,
            report.Hands == Hands.NotRecorded ? Say.Hands : null,
            report.Feet == Feet.NotRecorded ? Say.Feet : null,
            report.CasKt is null ? Say.Speed : null,
            report.PressureAltitudeFt is null ? Say.Altitude : null,
            report.PowerPercent is null ? Say.Power : null,
            report.FlapDeg is null ? Say.Flap : null,
            report.BallWidths is null ? Say.Ball : null,
            report.BankDeg is null ? Say.BankAndSeconds : null,
            report is { SeatLeftKg: null, SeatRightKg: null, Aboard: null } ? Say.Seats : null,
            string.IsNullOrWhiteSpace(report.SinceWhen) ? Say.SinceWhen : null,
            report.StraightBefore is null ? Say.WhetherItFlewStraightBefore : null,
        ];
        if (missing.OfType<string>().ToList() is { Count: > 0 } said) yield return new(Gaps.Fill(Say.NotRecorded, string.Join(", ", said)), Tone.Missing);
    }
}
