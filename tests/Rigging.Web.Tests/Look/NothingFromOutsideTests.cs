using System.Text.RegularExpressions;

namespace Rigging.Web.Tests.Look;

public sealed class NothingFromOutsideTests
{
    static readonly string[] Kinds = [".css", ".js", ".razor", ".svg"];

    static IEnumerable<(string Name, string Text)> Files => Directory.EnumerateFiles(Repository.Web, "*", SearchOption.AllDirectories)
        .Where(path => Kinds.Contains(Path.GetExtension(path))).Select(path => (Path.GetRelativePath(Repository.Web, path), File.ReadAllText(path)));

    [Fact]
    public void No_page_style_or_script_asks_another_host_for_anything() => Assert.All(Files, file =>
        Assert.DoesNotMatch(@"(https?:)?//(?!www\.w3\.org/2000/svg)[a-z0-9-]+\.[a-z]{2,}", Regex.Replace(file.Text, @"^\s*//.*$", "", RegexOptions.Multiline)));

    /// <summary>A content security policy without 'unsafe-inline' for scripts must be possible.</summary>
    [Fact]
    public void No_page_carries_a_script_of_its_own() => Assert.All(Files.Where(file => file.Name.EndsWith(".razor", StringComparison.Ordinal)), file =>
    {
        Assert.DoesNotMatch(@"<script(?![^>]*\bsrc=)", file.Text);
        Assert.DoesNotMatch(@"\son[a-z]+=""[^@]", file.Text);
        Assert.DoesNotContain("javascript:", file.Text, StringComparison.OrdinalIgnoreCase);
    });

    [Fact]
    public void Every_font_named_in_the_styles_is_shipped_with_its_licence()
    {
        var web = Path.Combine(Repository.Web, "wwwroot");
        var named = Regex.Matches(File.ReadAllText(Path.Combine(web, "tokens.css")), @"url\(""([^""]+)""\)").Select(m => m.Groups[1].Value).ToList();

        Assert.Equal(5, named.Count);
        Assert.All(named, name => Assert.True(File.Exists(Path.Combine(web, name)), name));
        Assert.Contains("SIL Open Font License", File.ReadAllText(Path.Combine(web, "fonts", "OFL.txt")), StringComparison.Ordinal);
    }
}
