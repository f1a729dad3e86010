using Microsoft.EntityFrameworkCore;
using Rigging.Storage;
using Rigging.Storage.Tests;
using Rigging.Web.Demo;

namespace Rigging.Web.Tests.Demo;

public sealed class DemoLoadTests(Postgres postgres, LoadedSchool loaded) : IClassFixture<LoadedSchool>
{
    [Fact]
    public async Task A_real_school_is_left_alone()
    {
        await using var school = await DemoDatabase.Create(postgres);
        await using (var db = school.CreateDbContext())
        {
            db.Installations.Add(new() { SchoolName = "Ours", RuleSet = "united-states", TimeZone = "America/Chicago", Created = DemoDatabase.LoadDay });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        Assert.False(await school.Load());

        Assert.Empty(await school.Entries());
    }

    [Fact]
    public async Task Cut_off_anywhere_it_goes_on_where_it_stopped_and_ends_the_same()
    {
        await using var cut = await DemoDatabase.Create(postgres);
        var times = 0;
        while (await IsCutOff(cut, cut.Opened + loaded.Uses / 7))
        {
            Assert.InRange(++times, 1, 20);
            // Days may pass before somebody starts it again.
            cut.Clock.AdvanceDays(1);
            await using var db = cut.CreateDbContext();
            Assert.False(await db.Users.AnyAsync(TestContext.Current.CancellationToken), "Nobody signs in before it is complete.");
        }

        Assert.True(times >= 5);
        Assert.Equal(await loaded.Database.Entries(), await cut.Entries());
        Assert.False(await cut.Load());
    }

    static async Task<bool> IsCutOff(DemoDatabase database, int after)
    {
        database.PlugPulledAfter = after;
        try
        {
            Assert.True(await database.Load());
            return false;
        }
        catch (PlugPulledException)
        {
            return true;
        }
        finally
        {
            database.PlugPulledAfter = null;
        }
    }

    [Fact]
    public async Task An_act_that_a_rule_refuses_stops_the_load_and_is_named()
    {
        using var folder = new CopiedFolder(SeedFolder.Shipped);
        folder.Change("squawks/1-left-wing-heavy.json", story => story["acts"]!.AsArray().Single(act => (string?)act!["kind"] == "independent-inspection")!["who"] = "jude");

        await using var school = await DemoDatabase.Create(postgres);
        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => school.Load(folder.Path));

        Assert.StartsWith("squawks/1-left-wing-heavy.json, act ", refused.Message, StringComparison.Ordinal);
        Assert.Contains("inspector-did-the-work", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_story_does_not_go_on_where_a_load_was_cut_off()
    {
        await using var cut = await DemoDatabase.Create(postgres);
        Assert.True(await IsCutOff(cut, loaded.Uses / 7));
        using var folder = new CopiedFolder(SeedFolder.Shipped);
        folder.Change("squawks/1-left-wing-heavy.json", story => story["acts"]![0]!["daysAgo"] = 27);

        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => cut.Load(folder.Path));

        Assert.Contains("Start again with an empty --data folder", refused.Message, StringComparison.Ordinal);
    }
}
