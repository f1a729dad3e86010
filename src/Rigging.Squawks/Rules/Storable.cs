using System.Collections;
using System.Reflection;
using System.Text;
using System.Text.Json;
using Rigging.Squawks.Entries;

namespace Rigging.Squawks.Rules;

/// <summary>What no record can hold, wherever in an entry it stands: a number that is none, a word that is none of the choices, a text nobody can print.</summary>
static class Storable
{
    public const int LongestText = 4000;
    const int LongestList = 200;

    /// <summary>Texts that a program wrote for a program: checked by whoever reads them, and longer than a person writes.</summary>
    static readonly string[] Written = [nameof(CheckFlown.TestPoints), nameof(Assessed.Request), nameof(Assessed.Response), nameof(Approved.RecordEntry)];

    public static IEnumerable<BrokenRule> Of(Fact fact) =>
        Properties(fact).SelectMany(property =>
            Of(property.GetValue(fact), JsonNamingPolicy.CamelCase.ConvertName(property.Name), Written.Contains(property.Name) ? 1_000_000 : LongestText));

    static IEnumerable<BrokenRule> Of(object? value, string field, int longest) => value switch
    {
        string text => Text(text, field, longest),
        double number when !double.IsFinite(number) => [new("value-out-of-range", $"{number} is not a number a record can hold.", field)],
        Enum word when !Enum.IsDefined(word.GetType(), word) => [new("value-out-of-range", $"“{word}” is none of the choices.", field)],
        ICollection list when list.Count > LongestList => [new("list-too-long", $"{list.Count} lines; {LongestList} is the most a record takes.", field)],
        IEnumerable list => list.Cast<object?>().SelectMany(item => Of(item, field, longest)),
        { } part when part.GetType().Namespace == typeof(Fact).Namespace && part is not Enum => Properties(part).SelectMany(p => Of(p.GetValue(part), field, longest)),
        _ => [],
    };

    /// <summary>What is stored of it: its own, not what its type has once for all.</summary>
    static PropertyInfo[] Properties(object part) => part.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance);

    public static bool Prints(Rune rune) => rune != Rune.ReplacementChar && (!Rune.IsControl(rune) || rune.Value is '\n' or '\r' or '\t');

    static IEnumerable<BrokenRule> Text(string text, string field, int longest)
    {
        if (text.Length > longest)
            yield return new("text-too-long", $"This text has {text.Length} characters; {longest} is the most a record takes.", field);
        if (!text.EnumerateRunes().All(Prints))
            yield return new("text-unreadable", "This text holds a character that cannot be printed. Take it out, or type the text again.", field);
    }
}
