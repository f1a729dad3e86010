using NodaTime;
using NodaTime.Text;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>Turns what a person typed into values. Everything that cannot be read becomes an error that names the field, what was typed and what was wanted; the text itself stays with the form.</summary>
public sealed class Typed
{
    readonly List<BrokenRule> errors = [];

    static readonly IPattern<LocalTime> Clock = new CompositePatternBuilder<LocalTime>
    {
        { LocalTimePattern.CreateWithInvariantCulture("HH:mm"), _ => true },
        { LocalTimePattern.CreateWithInvariantCulture("HH:mm:ss"), _ => true },
    }.Build();

    public IReadOnlyList<BrokenRule> Errors => errors;

    public bool Ok => errors.Count == 0;

    /// <summary>Null when left empty, or when it is not a number (then there is an error).</summary>
    public double? Number(string? text, string field, string name, string unit = "")
    {
        if (string.IsNullOrWhiteSpace(text)) return null;
        if (Fractions.Read(text) is { } number) return number;
        errors.Add(new("not-a-number", Gaps.Fill(Say.IsNotNumberWantedNumber, name, Short(text), unit.Length > 0 ? Gaps.Fill(Say.Of, unit) : ""), field));
        return null;
    }

    public double Needed(string? text, string field, string name, string unit = "")
    {
        if (string.IsNullOrWhiteSpace(text)) errors.Add(new("value-missing", Gaps.Fill(Say.NothingEnteredWantedNumber, name, unit.Length > 0 ? Gaps.Fill(Say.Of, unit) : ""), field));
        return Number(text, field, name, unit) ?? 0;
    }

    public int Whole(string? text, string field, string name)
    {
        var number = Needed(text, field, name);
        if (number == Math.Floor(number) && Math.Abs(number) < 1_000_000) return (int)number;
        errors.Add(new("not-a-whole-number", Gaps.Fill(Say.IsNotWholeNumber, name, Short(text)), field));
        return 0;
    }

    public LocalDate Date(string? text, string field, string name)
    {
        if (LocalDatePattern.Iso.Parse(text?.Trim() ?? "") is { Success: true } parsed) return parsed.Value;
        errors.Add(new("not-a-date", Gaps.Fill(Say.WantedYearMonthDay, name, string.IsNullOrWhiteSpace(text) ? Say.NothingEntered : Gaps.Fill(Say.IsNotDate, Short(text))), field));
        return default;
    }

    /// <summary>To the minute, as a clock on the wall shows it. A page that is live sends the seconds along.</summary>
    public LocalTime Time(string? text, string field, string name)
    {
        if (Clock.Parse(text?.Trim() ?? "") is { Success: true } parsed) return parsed.Value;
        errors.Add(new("not-a-time", Gaps.Fill(Say.WantedHoursMinutesLike, name, string.IsNullOrWhiteSpace(text) ? Say.NothingEntered : Gaps.Fill(Say.IsNotTime, Short(text))), field));
        return default;
    }

    /// <summary>A choice among the names of an enumeration, as the form posts them.</summary>
    public T Choice<T>(string? text, string field, string name) where T : struct, Enum
    {
        if (Enum.TryParse<T>(text, ignoreCase: true, out var value) && Enum.IsDefined(value) && !int.TryParse(text, out _)) return value;
        errors.Add(new("not-a-choice", Gaps.Fill(Say.ChooseOne, name, string.IsNullOrWhiteSpace(text) ? Say.NothingChosen : Gaps.Fill(Say.IsNotOneOfChoices, Short(text))), field));
        return default;
    }

    /// <summary>An answer to a question that has no default.</summary>
    public bool YesNo(string? text, string field, string name)
    {
        if (text is "yes" or "no") return text == "yes";
        errors.Add(new("not-a-choice", Gaps.Fill(Say.NothingChosenAnswerYes, name), field));
        return false;
    }

    public void Wrong(string code, string sentence, string field) => errors.Add(new(code, sentence, field));

    static string Short(string? text) => text is { Length: > 40 } ? text[..40] + "…" : text ?? "";
}
