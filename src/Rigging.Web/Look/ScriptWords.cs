using System.Text.Json;

namespace Rigging.Web.Look;

/// <summary>What a script says, handed to it as its own attribute data-say: the policy of the pages allows no script in the page.</summary>
static class ScriptWords
{
    public static string Draft => Of(("here", Texts.DraftKeptHere), ("nowhere", Texts.DraftNotKept), ("noConnection", Texts.DraftNoConnection), ("saved", Texts.DraftSaved),
        ("signedOut", Texts.DraftSignedOut), ("answered", Texts.ServerAnswered), ("notSavedKept", Texts.DraftNotSavedKept), ("notSaved", Texts.DraftNotSaved),
        ("restored", Texts.DraftRestored), ("back", Texts.DraftIsBack));

    public static string Scan => Of(("noCamera", Texts.ScanNoCamera), ("stop", Texts.ScanStop), ("hold", Texts.ScanHold));

    /// <returns>One JSON object of texts by name.</returns>
    public static string Of(params IEnumerable<(string Name, string Text)> words) => JsonSerializer.Serialize(words.ToDictionary(word => word.Name, word => word.Text));
}
