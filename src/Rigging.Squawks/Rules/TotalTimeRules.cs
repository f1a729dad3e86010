using NodaTime;
using Rigging.Squawks.Entries;

namespace Rigging.Squawks.Rules;

/// <summary>The total time last on record, and the day it is of.</summary>
/// <param name="On">Null where nobody knows any more.</param>
public sealed record TotalTimeOnRecord(double Hours, LocalDate? On)
{
    /// <summary>Such as "1234.5 h of 2026-03-02".</summary>
    public string Said => $"{Words.Number(Hours, 1)} h{(On is { } day ? $" of {day:uuuu-MM-dd}" : "")}";
}

/// <summary>Total time in service only grows, and by no more than the days hold: one rule wherever it is entered.</summary>
public static class TotalTimeRules
{
    public const double Most = 200_000;

    const double HoursInADay = 24;

    /// <param name="again">The same read and entered a second time; null when it was not.</param>
    /// <param name="on">The day it is of.</param>
    /// <param name="last">Null where none is on record.</param>
    public static IEnumerable<BrokenRule> Of(double hours, double? again, LocalDate on, TotalTimeOnRecord? last, LocalDate today, string field, string againField)
    {
        if (Impossible(hours, field) is { } impossible) yield return impossible;
        else if (again is { } second && Math.Abs(second - hours) > 0.04)
            yield return new("total-time-read-differently", $"Total time was entered as {Words.Number(hours, 1)} h and, the second time, as {Words.Number(second, 1)} h: read it once more.", againField);
        // Of a day before the last one on record nobody knows what the hours were then.
        else if (last is not null && hours < last.Hours && on >= (last.On ?? today))
            yield return new("total-time-backwards", $"Total time {Words.Number(hours, 1)} h is less than the {last.Said} on record. If that one is wrong, correct it first, with the reason.", field);
        else if (again is null && last is { On: { } then } && Held(then, on) is var held && hours - last.Hours > held)
            yield return new("total-time-jump",
                $"Total time {Words.Number(hours, 1)} h is {Words.Number(hours - last.Hours, 1)} h more than the {last.Said} on record, and the days since hold {Words.Number(held, 0)} h at most. Read it again, and enter it a second time.", againField);
    }

    public static IEnumerable<BrokenRule> Of(TotalTimeCorrected corrected, TotalTimeOnRecord? onRecord, string field, string reasonField)
    {
        foreach (var rule in Contents.Needed(corrected.Reason, "text-missing", reasonField, "what was wrong, and where the right figure stands")) yield return rule;
        if (Impossible(corrected.TotalTimeH, field) is { } impossible) yield return impossible;
        else if (onRecord is { } last && Math.Abs(last.Hours - corrected.TotalTimeH) < 0.05)
            yield return new("nothing-to-correct", $"Total time {last.Said} is on record: there is nothing to correct.", field);
    }

    static BrokenRule? Impossible(double hours, string field) => hours >= 0 && hours < Most ? null
        : new("value-out-of-range", $"Total time {Words.Number(hours, 1)} h cannot be: wanted 0 or more, and less than {Words.Number(Most)}.", field);

    static double Held(LocalDate from, LocalDate to) => HoursInADay * Math.Max(0, Period.DaysBetween(from, to) + 1);
}
