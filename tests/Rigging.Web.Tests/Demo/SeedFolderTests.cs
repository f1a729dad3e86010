using System.Text.Json.Nodes;
using Rigging.Storage;
using Rigging.Web.Demo;

namespace Rigging.Web.Tests.Demo;

public class SeedFolderTests
{
    [Fact]
    public void Files_that_do_not_hold_together_are_refused_by_name()
    {
        using var folder = new CopiedFolder(SeedFolder.Shipped);
        folder.Change("squawks/7-a-few-words.json", story => (story["aircraft"], story["acts"]![0]!["who"]) = ("QXX-999", "nobody"));
        folder.Change("people.json", people => people[4]!["certificates"]![0]!["kind"] = "wizard");

        var refused = Assert.Throws<StartRefusedException>(() => SeedFolder.Read(folder.Path));

        Assert.Contains("squawks/7-a-few-words.json: no aircraft 'QXX-999' in fleet.json.", refused.Message, StringComparison.Ordinal);
        Assert.Contains("squawks/7-a-few-words.json: nobody is called 'nobody' in people.json.", refused.Message, StringComparison.Ordinal);
        Assert.Contains("people.json, jude: no certificate kind 'wizard'", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fleet.json", "serialNumber")]
    [InlineData("squawks/2-within-limits.json", "mood")]
    public void A_word_that_no_file_has_is_refused(string file, string word)
    {
        using var folder = new CopiedFolder(SeedFolder.Shipped);
        folder.Change(file, json => (json is JsonArray list ? list[0]! : json)[word] = 1);

        var refused = Assert.Throws<StartRefusedException>(() => SeedFolder.Read(folder.Path));

        Assert.StartsWith(file, refused.Message, StringComparison.Ordinal);
        Assert.Contains(word, refused.Message, StringComparison.Ordinal);
    }
}
