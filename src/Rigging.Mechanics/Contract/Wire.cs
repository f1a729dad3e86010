using System.Collections.Frozen;
using System.Text.Json;

namespace Rigging.Mechanics.Contract;

/// <summary>The one way an enumeration gets its word on the wire: <c>ReleaseWheel</c> is written <c>release-wheel</c>.</summary>
public static class Wire
{
    /// <summary>The lower-case, hyphenated word of <paramref name="value"/>.</summary>
    public static string Word<T>(T value) where T : struct, Enum => Vocabulary<T>.WordOf[value];

    /// <summary>Every word of <typeparamref name="T"/>, in the order of its declaration.</summary>
    public static IReadOnlyList<string> Words<T>() where T : struct, Enum => Vocabulary<T>.All;

    /// <summary>The value behind a word; false when <typeparamref name="T"/> has no such word. Case matters.</summary>
    public static bool TryRead<T>(string word, out T value) where T : struct, Enum => Vocabulary<T>.ValueOf.TryGetValue(word, out value);

    static class Vocabulary<T> where T : struct, Enum
    {
        internal static readonly FrozenDictionary<T, string> WordOf =
            Enum.GetValues<T>().ToFrozenDictionary(value => value, value => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()));

        internal static readonly FrozenDictionary<string, T> ValueOf = WordOf.ToFrozenDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);

        internal static readonly IReadOnlyList<string> All = [.. Enum.GetValues<T>().Select(value => WordOf[value])];
    }
}
