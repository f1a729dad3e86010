using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using Rigging.Web.Look;

namespace Rigging.Web.Tests.Look;

public sealed partial class TextsTests
{
    static readonly (string Class, ResourceManager Texts, string Folder)[] Files =
    [
        ("Texts", Texts.ResourceManager, ""), ("Say", Rigging.Web.Report.Say.ResourceManager, "Report"), ("Say", Rigging.Web.SignIn.Say.ResourceManager, "SignIn"),
    ];

    /// <summary>A text that is not written does not compile; one that nobody asks for would be translated for nothing.</summary>
    [Fact]
    public void Every_written_text_is_used()
    {
        foreach (var (name, texts, folder) in Files)
        {
            var sources = string.Concat(Directory.EnumerateFiles(Path.Combine(Repository.Web, folder), "*.*", SearchOption.AllDirectories).Where(file => Path.GetExtension(file) is ".razor" or ".cs").Select(File.ReadAllText));
            Assert.All(Written(texts), text => Assert.Matches($@"\b{name}\.{text}\b", sources));
        }
    }

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

    [Fact]
    public void Gaps_are_filled_in_their_order() => Assert.Equal("two, then one, then two", Gaps.Fill("{1}, then {0}, then {1}", "one", "two"));

    /// <summary>What the layouts and these pages say is in a file, so that a translator finds it there.</summary>
    [Theory, InlineData("Layout"), InlineData("Report"), InlineData("SignIn/SignInPage.razor")]
    public void These_pages_have_no_words_of_their_own(string place)
    {
        var path = Path.Combine(Repository.Web, place);
        foreach (var file in Directory.Exists(path) ? Directory.EnumerateFiles(path, "*.razor") : [path])
        {
            var page = File.ReadAllText(file).Split("@code")[0];
            foreach (Match words in Words().Matches(page))
                Assert.True(words.Groups[1].Value.Trim() is "Rigging" || file.EndsWith("NotFoundPage.razor", StringComparison.Ordinal), $"{Path.GetFileName(file)}: “{words.Value}”");
            Assert.DoesNotMatch("(Label|Help)=\"[^\"@]+\"", page);
        }
    }

    static IEnumerable<string> Written(ResourceManager texts) => texts.GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!.Cast<DictionaryEntry>().Select(entry => (string)entry.Key);

    [GeneratedRegex(">([^<>@{}=]*[A-Za-z]{3}[^<>@{}=]*)<")]
    private static partial Regex Words();
}
