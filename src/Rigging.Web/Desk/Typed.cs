using NodaTime;
using NodaTime.Text;
using Rigging.Squawks.Rules;

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
        errors.Add(new("not-a-number", $"{name}: “{Short(text)}” is not a number. Wanted a number{(unit.Length > 0 ? $" of {unit}" : "")}, like 12.5.", field));
        return null;
    }

    public double Needed(string? text, string field, string name, string unit = "")
    {
        if (string.IsNullOrWhiteSpace(text)) errors.Add(new("value-missing", $"{name}: nothing entered. Wanted a number{(unit.Length > 0 ? $" of {unit}" : "")}.", field));
        return Number(text, field, name, unit) ?? 0;
    }

    public int Whole(string? text, string field, string name)
    {
        var number = Needed(text, field, name);
        if (number == Math.Floor(number) && Math.Abs(number) < 1_000_000) return (int)number;
        errors.Add(new("not-a-whole-number", $"{name}: “{Short(text)}” is not a whole number.", field));
        return 0;
    }

    public LocalDate Date(string? text, string field, string name)
    {
        if (LocalDatePattern.Iso.Parse(text?.Trim() ?? "") is { Success: true } parsed) return parsed.Value;
        errors.Add(new("not-a-date", $"{name}: {(string.IsNullOrWhiteSpace(text) ? "nothing entered" : $"“{Short(text)}” is not a date")}. Wanted year-month-day, like 2026-03-02.", field));
        return default;
    }

    /// <summary>To the minute, as a clock on the wall shows it. A page that is live sends the seconds along.</summary>
    public LocalTime Time(string? text, string field, string name)
    {
        if (Clock.Parse(text?.Trim() ?? "") is { Success: true } parsed) return parsed.Value;
        errors.Add(new("not-a-time", $"{name}: {(string.IsNullOrWhiteSpace(text) ? "nothing entered" : $"“{Short(text)}” is not a time")}. Wanted hours:minutes, like 14:05.", field));
        return default;
    }

    /// <summary>A choice among the names of an enumeration, as the form posts them.</summary>
    public T Choice<T>(string? text, string field, string name) where T : struct, Enum
    {
        if (Enum.TryParse<T>(text, ignoreCase: true, out var value) && Enum.IsDefined(value) && !int.TryParse(text, out _)) return value;
        errors.Add(new("not-a-choice", $"{name}: {(string.IsNullOrWhiteSpace(text) ? "nothing chosen" : $"“{Short(text)}” is not one of the choices")}. Choose one.", field));
        return default;
    }

    /// <summary>An answer to a question that has no default.</summary>
    public bool YesNo(string? text, string field, string name)
    {
        if (text is "yes" or "no") return text == "yes";
        errors.Add(new("not-a-choice", $"{name}: nothing chosen. Answer yes or no.", field));
        return false;
    }

    public void Wrong(string code, string sentence, string field) => errors.Add(new(code, sentence, field));

    static string Short(string? text) => text is { Length: > 40 } ? text[..40] + "…" : text ?? "";
}
