namespace Rigging.Web.Tests.Architecture;

/// <summary>References point one way, and the inside is pure. Each rule has a plant for each thing it forbids: a rule that lets its plant pass is asleep.</summary>
public class DependencyTests
{
    // Reading an embedded resource is no input or output; opening a file, a socket or a database is.
    const string InputOrOutput = @"^(System\.IO\.(File|Directory|FileStream|FileInfo|DirectoryInfo|Path)$|System\.Net\.|Microsoft\.EntityFrameworkCore|Npgsql|Microsoft\.Extensions\.Logging)";
    const string AClock = @"^NodaTime\.(IClock|SystemClock)$|^System\.TimeProvider$";
    const string Persistence = @"^(Microsoft\.EntityFrameworkCore|Npgsql|Rigging\.Storage\.RiggingDb|Rigging\.Storage\..*Row$)";

    public static TheoryData<string, string> Rules => new()
    {
        { @"^Rigging\.Mechanics(\.|$)", InputOrOutput },
        { @"^Rigging\.Mechanics(\.|$)", AClock },
        { @"^Rigging\.Mechanics(\.|$)", @"^Rigging\.(Squawks|Storage|Web)\." },
        { @"^Rigging\.Squawks(\.|$)", InputOrOutput },
        { @"^Rigging\.Squawks(\.|$)", AClock },
        { @"^Rigging\.Squawks\.(Entries|Ledgers|People|Rules|RuleSets|Signing|Evidence)", @"^Rigging\.(Storage|Web)\." },
        { @"^Rigging\.Storage(\.|$)", @"^Rigging\.Web\." },
    };

    [Theory, MemberData(nameof(Rules))]
    public void A_room_uses_only_what_lies_below_it(string from, string nothingMatching)
    {
        var production = from + @"(?!.*Tests)";
        Assert.True(House.HasTypesIn(production), $"No type matches {from}: the rule would hold for nothing.");
        Assert.True(House.Holds(House.Uses(production, nothingMatching)), $"{from} uses something matching {nothingMatching}.");
    }

    public static TheoryData<string, string> Plants => new()
    {
        { "OpensAFile", InputOrOutput },
        { "OpensASocket", InputOrOutput },
        { "OpensADatabase", InputOrOutput },
        { "UsesEntityFramework", InputOrOutput },
        { "ReadsAClock", AClock },
        { "UsesSquawks", @"^Rigging\.(Squawks|Storage|Web)\." },
        { "UsesStorage", @"^Rigging\.(Storage|Web)\." },
        { "UsesWeb", @"^Rigging\.Web\." },
        { "ShowsARow", Persistence },
    };

    [Theory, MemberData(nameof(Plants))]
    public void Each_rule_bites_on_what_it_forbids(string plant, string nothingMatching) =>
        Assert.False(House.Holds(House.Uses($@"^Planted\.{plant}$", nothingMatching)));
}
