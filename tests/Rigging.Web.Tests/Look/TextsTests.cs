using System.Collections;
using System.Globalization;
using System.Reflection;
using Rigging.Web.Look;

namespace Rigging.Web.Tests.Look;

public sealed class TextsTests
{
    static IEnumerable<string> Members => typeof(Texts).GetMembers(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
        .Where(member => member is PropertyInfo || member is MethodInfo { IsSpecialName: false }).Select(member => member.Name);

    static IEnumerable<string> Written => Texts.Resources.GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!.Cast<DictionaryEntry>().Select(entry => (string)entry.Key);

    [Fact]
    public void Every_shared_text_is_written_and_every_written_one_is_used() => Assert.Equal(Members.Order(StringComparer.Ordinal), Written.Order(StringComparer.Ordinal));

    [Fact]
    public void A_language_nobody_has_written_shows_the_english_one()
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("fi-FI");
            Assert.Equal("May fly", Texts.MayFly);
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    /// <summary>What the layouts say is in the file, so that a translator finds it there.</summary>
    [Fact]
    public void No_layout_has_words_of_its_own()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Web, "Layout"), "*.razor"))
        {
            var page = File.ReadAllText(file).Split("@code")[0];
            foreach (System.Text.RegularExpressions.Match words in System.Text.RegularExpressions.Regex.Matches(page, ">([^<>@{}]*[A-Za-z]{3}[^<>@{}]*)<"))
                Assert.True(words.Groups[1].Value.Trim() is "Rigging" || file.EndsWith("NotFoundPage.razor", StringComparison.Ordinal), $"{Path.GetFileName(file)}: “{words.Groups[1].Value.Trim()}”");
        }
    }
}
