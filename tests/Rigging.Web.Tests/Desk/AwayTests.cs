using System.Net;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Rigging.Squawks.Tests;
using Rigging.Storage;
using Rigging.Storage.Tests;

namespace Rigging.Web.Tests.Desk;

/// <summary>The database goes away under a person's hands: the page says so, and what was typed is not lost.</summary>
public sealed class AwayTests(Postgres postgres) : IAsyncLifetime
{
    readonly Hangar hangar = new(postgres);
    int number;

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await hangar.InitializeAsync();
        number = await hangar.Squawk(School.Called);
    }

    public async ValueTask DisposeAsync()
    {
        await Admit(true);
        await hangar.DisposeAsync();
    }

    string Name => new NpgsqlConnectionStringBuilder(hangar.Site.Owner).Database!;

    // To this site the same as a server that stopped: what is open breaks, and nothing new is let in.
    async Task Admit(bool admitted)
    {
        await Postgres.Execute(postgres.AdminOf("postgres"), $"alter database {Name} with allow_connections {admitted}");
        if (!admitted)
        {
            await Postgres.Execute(postgres.AdminOf("postgres"), $"select pg_terminate_backend(pid) from pg_stat_activity where datname = '{Name}'");
            NpgsqlConnection.ClearAllPools();
        }
    }

    [Fact]
    public async Task A_form_sent_while_it_is_away_comes_back_and_is_recorded_once_it_is_there_again()
    {
        const string words = "It did it again: \"left\" & <slowly>.\nTwice.";
        using var pilot = await hangar.As(School.Pilot);
        var form = await pilot.Open($"/squawks/{number}/other/note");
        await Admit(false);

        var away = await pilot.Submit(form, new() { ["text"] = words });

        Assert.Equal(HttpStatusCode.ServiceUnavailable, away.Status);
        Assert.Contains("The database does not answer.", away.Document.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(words, away.Document.QuerySelector("dd")!.TextContent);
        Assert.Empty(away.Document.QuerySelectorAll("script"));

        await Admit(true);
        var sent = await pilot.Submit(away, []);
        Assert.Equal(HttpStatusCode.Redirect, sent.Status);
        // This test's own reader may still hold a connection that was cut; it shows once, and the pool lets go of it.
        await Record.ExceptionAsync(() => hangar.Ledger(number));
        Assert.Equal(words, Assert.IsType<Squawks.Entries.Noted>((await hangar.Ledger(number)).Entries[^1].Fact).Text.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task A_full_disk_is_named_and_nothing_is_recorded()
    {
        // The server's own answer to a write that finds no room, without filling a disk.
        await Postgres.Execute(hangar.Site.Owner, "create function no_room() returns trigger language plpgsql as $$ begin raise exception 'could not extend file: No space left on device' using errcode = 'disk_full'; end $$; create trigger no_room before insert on ledger_entry for each statement execute function no_room()");
        using var pilot = await hangar.As(School.Pilot);

        var away = await pilot.Submit(await pilot.Open($"/squawks/{number}/other/note"), new() { ["text"] = "No room for this." });

        Assert.Equal(HttpStatusCode.ServiceUnavailable, away.Status);
        Assert.Contains("The database's disk is full.", away.Text, StringComparison.Ordinal);
        Assert.Contains("No room for this.", away.Text, StringComparison.Ordinal);
        Assert.Equal(2, (await hangar.Ledger(number)).Length);
    }

    [Fact]
    public async Task A_page_asked_for_says_so_and_a_password_is_never_sent_back()
    {
        using var pilot = await hangar.As(School.Pilot);
        using var stranger = hangar.Site.Browser();
        var signIn = await stranger.Open("/sign-in");
        await Admit(false);

        var page = await pilot.Open($"/squawks/{number}/other");
        var refused = await stranger.Submit(signIn, new() { ["Form.Name"] = "paula@school.example", ["Form.Password"] = "a-secret-of-paula" });
        var draft = await pilot.Http.GetAsync(new Uri("/drafts/report", UriKind.Relative), Ct);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, page.Status);
        Assert.Equal($"/squawks/{number}/other", page.Document.QuerySelector("main a")!.GetAttribute("href"));
        Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.Status);
        Assert.DoesNotContain("a-secret-of-paula", refused.Document.DocumentElement.OuterHtml, StringComparison.Ordinal);
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "application/problem+json"), (draft.StatusCode, draft.Content.Headers.ContentType!.MediaType));
    }

    [Fact]
    public void A_bug_is_not_taken_for_a_database_that_is_away()
    {
        Assert.Null(DatabaseAway.Why(new InvalidOperationException("a bug")));
        Assert.Null(DatabaseAway.Why(new DbUpdateException("x", new PostgresException("duplicate key", "ERROR", "ERROR", "23505"))));
        Assert.NotNull(DatabaseAway.Why(new DbUpdateException("x", new PostgresException("no space", "ERROR", "ERROR", "53100"))));
        Assert.NotNull(DatabaseAway.Why(new InvalidOperationException("transient", new NpgsqlException("lost", new IOException()))));
        Assert.NotNull(DatabaseAway.Why(new PostgresException("shutting down", "FATAL", "FATAL", "57P01")));
    }
}
