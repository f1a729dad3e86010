using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Resources;
using System.Text.RegularExpressions;
using Rigging.Squawks.Ledgers;
using Rigging.Web.Checks;
using Rigging.Web.Desk;
using Rigging.Web.Drawings;
using Rigging.Web.Look;

namespace Rigging.Web.Tests.Look;

public sealed partial class TextsTests
{
    /// <summary>The class of each resource file; the folder it stands for is the end of its namespace.</summary>
    static readonly Type[] Files = [.. typeof(Program).Assembly.GetTypes().Where(type => type.Name is "Texts" or "Say" && type.GetProperty("ResourceManager", BindingFlags.Static | BindingFlags.NonPublic) is not null)];

    static ResourceManager TextsOf(Type file) => (ResourceManager)file.GetProperty("ResourceManager", BindingFlags.Static | BindingFlags.NonPublic)!.GetValue(null)!;

    static IEnumerable<string> Sources(string folder, params string[] kinds) =>
        Directory.EnumerateFiles(Path.Combine(Repository.Web, folder), "*.*", SearchOption.AllDirectories).Where(file => kinds.Contains(Path.GetExtension(file)) && !file.Contains("/obj/", StringComparison.Ordinal));

    static string Place(string file) => Path.GetRelativePath(Repository.Web, file).Replace('\\', '/');

    /// <summary>A text that is not written does not compile; one that nobody asks for would be translated for nothing.</summary>
    [Fact]
    public void Every_written_text_is_used()
    {
        Assert.True(Files.Length > 15, $"{Files.Length} resource files");
        foreach (var file in Files)
        {
            var used = Sources(file.Name == "Texts" ? "" : file.Namespace!.Split('.')[^1], ".razor", ".cs").SelectMany(source => Asked(file.Name).Matches(File.ReadAllText(source)).Select(asked => asked.Groups[1].Value)).ToHashSet();
            Assert.Equal([], Written(TextsOf(file)).Except(used).Select(text => $"{file.FullName}.{text}"));
        }
    }

    /// <summary>A language that nobody has written, for this test: every text in brackets. Other tests, in their own culture, see the English one.</summary>
    sealed class InBrackets(ResourceManager english) : ResourceManager
    {
        public const string Language = "qps-Ploc";

        public ResourceManager English => english;

        public override string? GetString(string name, CultureInfo? culture) =>
            (culture ?? CultureInfo.CurrentUICulture).Name == Language ? $"[{english.GetString(name, CultureInfo.InvariantCulture)}]" : english.GetString(name, culture);
    }

    [Fact]
    public void Another_language_is_shown_everywhere_from_the_moment_it_is_chosen()
    {
        foreach (var file in Files)
            if (TextsOf(file) is { } english and not InBrackets)
                file.GetField("resourceMan", BindingFlags.Static | BindingFlags.NonPublic)!.SetValue(null, new InBrackets(english));
        var before = CultureInfo.CurrentUICulture;
        try
        {
            Assert.Equal("No rigging hold", Texts.NoRiggingHold);
            var level = AeroplaneView.FromRate(0, -0.1, 0.1, null).Title;
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(InBrackets.Language);

            Assert.Equal("[No rigging hold]", Texts.NoRiggingHold);
            Assert.Equal($"[{level}]", AeroplaneView.FromRate(0, -0.1, 0.1, null).Title);
            Assert.All(CheckSheet.All, check => Assert.StartsWith("[", check.Title, StringComparison.Ordinal));
            Assert.All(Choice.YesNo, choice => Assert.StartsWith("[", choice.Label, StringComparison.Ordinal));
            Assert.Contains("[Draft saved {0}]", ScriptWords.Draft, StringComparison.Ordinal);
            Assert.Equal("[Back to S-12]", Gaps.Fill(Texts.BackToS, 12));
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    /// <summary>The program knows rigging complaints and nothing else of an aircraft: its good status claims no more. Of limits it may be said.</summary>
    [Fact]
    public void Nothing_says_may_fly_as_a_good_status()
    {
        string[] spoken =
        [
            .. Directory.EnumerateFiles(Path.Combine(Repository.Home, "src"), "*.*", SearchOption.AllDirectories)
                .Where(file => Path.GetExtension(file) is ".resx" or ".razor" or ".js" or ".cs" or ".json" && !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/Migrations/", StringComparison.Ordinal)),
            .. Directory.EnumerateFiles(Path.Combine(Repository.Home, "docs"), "*.md", SearchOption.AllDirectories),
            .. Directory.EnumerateFiles(Path.Combine(Repository.Home, "seed-data"), "*.*", SearchOption.AllDirectories),
            .. (string[])["README.md", "DEVELOPERS.md"],
        ];
        Assert.True(spoken.Length > 400);
        Assert.All(spoken, file => Assert.All(File.ReadAllLines(Path.Combine(Repository.Home, file)).Where(line => !line.TrimStart().StartsWith("///", StringComparison.Ordinal)),
            line => Assert.DoesNotMatch(@"(?i)\b(may|can|free to) fly\b(?! with limits)", line)));
        Assert.Equal(["no rigging hold", "may fly with limits", "crew only", "held", "grounded"], Enum.GetValues<FlightStatus>().Select(Squawks.Rules.Words.Of));
        Assert.Equal("No rigging hold", Standing.Of(FlightStatus.MayFly).Word);
    }

    [Fact]
    public void A_language_nobody_has_written_shows_the_english_one()
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("fi-FI");
            Assert.Equal("No rigging hold", Texts.NoRiggingHold);
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Theory]
    [InlineData("{1}, then {0}, then {1}", "two, then one, then two")]
    [InlineData("{0} and {2}", "one and {2}")]
    public void Gaps_are_filled_in_their_order(string text, string filled) => Assert.Equal(filled, Gaps.Fill(text, "one", "two"));

    [Fact]
    public void What_fills_a_gap_is_not_read_for_gaps() => Assert.Equal("{1} two", Gaps.Fill("{0} {1}", "{1}", "two"));

    /// <summary>The product's name, what is typed into a terminal, and units.</summary>
    static readonly HashSet<string> SameInEveryLanguage = ["Rigging", "· Rigging", "rigging verify FILE", "rigging verify --seal FILE", "rigging seal"];

    public static TheoryData<string> Pages => [.. Sources("", ".razor").Select(Place)];

    /// <summary>What a page says is in a file, so that a translator finds it there.</summary>
    [Theory, MemberData(nameof(Pages))]
    public void No_page_has_words_of_its_own(string place)
    {
        var page = Remarks().Replace(File.ReadAllText(Path.Combine(Repository.Web, place)), "").Split("@code")[0];

        Assert.Equal([], Words().Matches(page).Select(words => words.Groups[1].Value.Trim()).Where(words => !SameInEveryLanguage.Contains(words)));
        Assert.Equal([], WordsInAttributes().Matches(page).Select(words => words.Value));
    }

    [Theory, InlineData("<p>Wait here</p>"), InlineData("<p>@x Wait</p>"), InlineData("<p>@(x) Wait</p>"), InlineData("""<Field Label="Why" />"""), InlineData("<a>@Say.X</a> or <a>@Say.Y</a>")]
    public void That_rule_bites(string planted) => Assert.True(Words().IsMatch(planted) || WordsInAttributes().IsMatch(planted));

    [Fact]
    public void A_fields_label_begins_with_a_capital()
    {
        var labels = (from page in Sources("", ".razor")
                      from label in Labels().Matches(File.ReadAllText(page))
                      let file = label.Groups[1].Value == "Texts" ? typeof(Texts) : Files.Single(file => file.Name == "Say" && file.Namespace!.Split('.')[^1] == Path.GetFileName(Path.GetDirectoryName(page)))
                      select (Place: $"{Place(page)}: {label.Value}", Text: TextsOf(file).GetString(label.Groups[2].Value, CultureInfo.InvariantCulture)!)).ToList();

        Assert.True(labels.Count > 150, $"{labels.Count} labels");
        Assert.Equal([], labels.Where(label => char.IsLower(label.Text[0])));
    }

    /// <summary>What can be chosen begins with a capital because one component sees to it; an option written past it must see to it itself.</summary>
    [Fact]
    public void What_can_be_chosen_begins_with_a_capital()
    {
        var options = (from page in Sources("", ".razor") from option in Options().Matches(File.ReadAllText(page)) select (Place: Place(page), Said: option.Groups[1].Value)).ToList();

        Assert.True(options.Count > 7, $"{options.Count} options");
        Assert.Equal([], options.Where(option => !option.Said.StartsWith("@Words.Capital(", StringComparison.Ordinal)
            && !(option.Said.StartsWith("@Texts.", StringComparison.Ordinal) && char.IsUpper(TextsOf(typeof(Texts)).GetString(option.Said["@Texts.".Length..], CultureInfo.InvariantCulture)![0]))));
    }

    /// <summary>
    /// Where English stays, and why: what goes into a ledger or a register for good, what machines and administrators read, and what is evidence.
    /// </summary>
    static readonly string[] StaysEnglish =
    [
        "Api/", "Commands/", "Demo/", "Notices/", "Security/", "Records/Bundle", "Records/Touched.cs", "Records/Lists.cs", "Records/Csv.cs", "Program.cs", "Site.cs",
        "Report/Choices.cs", "FlightCard/CardReadings.cs", "Work/WorkForm.cs", "Office/Accounts.cs", "Office/OfficeBooks.cs", "SignIn/Account.cs", "SignIn/Doorman.cs", "SignIn/Invitations.cs",
    ];

    [Fact]
    public void No_code_behind_a_page_holds_a_sentence() => Assert.Equal([], from file in Sources("", ".cs")
                                                                             where !StaysEnglish.Any(Place(file).StartsWith)
                                                                             from line in File.ReadLines(file)
                                                                             where !NotShown().IsMatch(line)
                                                                             from sentence in Sentence().Matches(line)
                                                                             select $"{Place(file)}: {sentence.Value}");

    /// <summary>A text kept from the start of the program would stay in the language of whoever came first.</summary>
    [Fact]
    public void No_text_is_kept_for_later() => Assert.Equal([], from file in Sources("", ".cs", ".razor")
                                                                from kept in KeptTexts().Matches(File.ReadAllText(file))
                                                                select $"{Place(file)}: {kept.Value}");

    static IEnumerable<string> Written(ResourceManager texts) =>
        (texts is InBrackets other ? other.English : texts).GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!.Cast<DictionaryEntry>().Select(entry => (string)entry.Key);

    static Regex Asked(string name) => new($@"\b{name}\.(\w+)\b");

    [GeneratedRegex(@"@\*.*?\*@|^@(page|using|layout|attribute|inject|inherits|implements|rendermode)\b.*?$", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Remarks();

    /// <summary>Between tags or after an expression, up to the next tag or expression: two letters or more.</summary>
    [GeneratedRegex(@"(?:(?<![=\-])>|(?<=@[\w.]+|\)|</\w+>)\s)([^<>@{}()=;""]*[A-Za-z]{2}[^<>@{}()=;""]*)(?=[<@])")]
    private static partial Regex Words();

    [GeneratedRegex(@"\b(Label|Help|Heading|Title|Empty|Again|Text|alt|aria-label)=""[^""@]*[A-Za-z]{3}[^""@]*""")]
    private static partial Regex WordsInAttributes();

    [GeneratedRegex(@"\bLabel=""@(?:Gaps\.Fill\()?(Say|Texts)\.(\w+)")]
    private static partial Regex Labels();

    [GeneratedRegex(@"<option\b[^>]*>([^<]*)</option>")]
    private static partial Regex Options();

    /// <summary>Three words in a row, the first with a capital.</summary>
    [GeneratedRegex(@"\$?""[^""]*\b[A-Z][a-z’]* [a-z’]+,? [a-z’]+[^""]*""")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"^\s*//|Log(Warning|Information|Error)\(|Exception\(|GeneratedRegex|ExecuteSql|""insert into")]
    private static partial Regex NotShown();

    [GeneratedRegex(@"static readonly [^;=]*=(?!>)[^;]*\b(Say|Texts)\.\w+|static [^;={]*\{ get; \} =[^;]*\b(Say|Texts)\.\w+")]
    private static partial Regex KeptTexts();
}
