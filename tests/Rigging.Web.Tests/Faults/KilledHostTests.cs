using System.Collections.Concurrent;
using System.Diagnostics;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Identity;
using Npgsql;
using Rigging.Squawks.Entries;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;
using Rigging.Storage.School;
using Rigging.Storage.Tests;
using Rigging.Storage.Tests.Cluster;
using Rigging.Storage.Tests.Faults;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Web.Tests.Faults;

/// <summary>The whole program, its private database below it, killed while people send forms; what they were answered is compared with what is there.</summary>
public sealed class KilledHostTests : IDisposable
{
    const string Email = "paula@school.example";
    const string Password = "a-password-for-tests";

    readonly ScratchFolder scratch = new();
    readonly Random chance = new(7);
    readonly ConcurrentDictionary<string, bool> told = [];

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_answered_is_there_once_and_nothing_is_half_written()
    {
        await SchoolWithASquawk();
        for (var round = 0; round < Rounds.Of(4); round++)
        {
            using var host = Start();
            var address = await AddressOf(host);
            using var http = new HttpClient { BaseAddress = address };
            await SignIn(http);
            await Strike(round, host, http);
            await host.WaitForExitAsync(Ct);
            await Compare(round);
        }
    }

    async Task Strike(int round, Process host, HttpClient http)
    {
        if (round % 4 is 0 or 1)
        {
            // Half way: the projection cannot be written while somebody holds its table.
            // And after the commit, before anybody read the answer: the entry is seen in the database first.
            var half = round % 4 == 0;
            await using var beside = new NpgsqlConnection(Beside());
            await beside.OpenAsync(Ct);
            if (half) await Execute(beside, "begin; lock table squawk in share mode");
            var text = $"round {round}, alone";
            var sent = Send(http, text);
            await using var seen = new NpgsqlCommand(half
                ? "select exists (select from pg_locks where not granted and relation = 'squawk'::regclass)"
                : $"select exists (select from ledger_entry where payload_json -> 'fact' ->> 'text' = '{text}')", beside);
            while (!(bool)(await seen.ExecuteScalarAsync(Ct))!) await Task.Yield();
            host.Kill();
            await sent;
            return;
        }
        var enough = told.Count(pair => pair.Value) + chance.Next(1, 12);
        using var over = new CancellationTokenSource();
        var clients = Enumerable.Range(0, 3).Select(async client =>
        {
            for (var n = 0; !over.IsCancellationRequested; n++) await Send(http, $"round {round}, client {client}, {n}");
        }).ToList();
        while (told.Count(pair => pair.Value) < enough) await Task.Yield();
        host.Kill();
        await over.CancelAsync();
        await Task.WhenAll(clients);
    }

    /// <summary>One note by form, as a browser sends it; acknowledged when the site leads on to the squawk.</summary>
    async Task Send(HttpClient http, string text)
    {
        told[text] = false;
        try
        {
            var answer = await Submit(http, "squawks/1/other/note", new() { ["text"] = text, ["corrects"] = "" });
            if (answer.RequestMessage!.RequestUri!.AbsolutePath == "/squawks/1") told[text] = true;
        }
        catch (HttpRequestException)
        {
            // No answer: it may or may not be there.
        }
    }

    async Task Compare(int round)
    {
        await using var cluster = await PrivateCluster.Start(scratch.Data, Ct);
        var school = new SchoolHouse(() => Task.FromResult(At(cluster)));
        await school.Connect();
        await using var db = school.CreateDbContext();
        var squawk = db.Squawks.Single();
        var ledger = (await school.Ledgers.Load(squawk.Id, Ct))!;
        var there = ledger.Entries.Select(entry => entry.Fact).OfType<Noted>().GroupBy(note => note.Text).ToDictionary(group => group.Key, group => group.Count());
        foreach (var (text, acknowledged) in told)
            Assert.True(!acknowledged || there.GetValueOrDefault(text) == 1, $"Round {round}: “{text}” was acknowledged and is there {there.GetValueOrDefault(text)} times.");
        Assert.Empty(there.Keys.Except(told.Keys));
        Assert.All(there.Values, times => Assert.Equal(1, times));
        if (round % 4 == 0) Assert.Equal(0, there.GetValueOrDefault($"round {round}, alone"));
        if (round % 4 == 1) Assert.Equal(1, there.GetValueOrDefault($"round {round}, alone"));
        var report = await school.Audit.Verify(Ct);
        Assert.True(report.Holds, string.Join('\n', report.Lines));
        Assert.Equivalent(Storage.Ledgers.SquawkRow.Of(ledger, squawk.HeadHash), squawk, strict: true);
        NpgsqlConnection.ClearAllPools();
    }

    async Task SchoolWithASquawk()
    {
        await using var cluster = await PrivateCluster.Start(scratch.Data, Ct);
        await DatabaseSetup.Prepare(At(cluster).Admin, ct: Ct);
        var school = new SchoolHouse(() => Task.FromResult(At(cluster)));
        await school.InitializeAsync();
        await school.Walk();
        await using var db = school.CreateDbContext();
        var paula = new User { Id = Guid.NewGuid(), PersonId = school.Pilot, UserName = Email, NormalizedUserName = Email.ToUpperInvariant(), Email = Email, NormalizedEmail = Email.ToUpperInvariant(), SecurityStamp = "one" };
        paula.PasswordHash = new PasswordHasher<User>().HashPassword(paula, Password);
        db.Users.Add(paula);
        await db.SaveChangesAsync(Ct);
        NpgsqlConnection.ClearAllPools();
    }

    static TestDatabase At(PrivateCluster cluster) =>
        new(new NpgsqlConnectionStringBuilder(cluster.AdminConnection) { Database = "rigging" }.ConnectionString, cluster.ConnectionFor(DatabaseSetup.App, "rigging"));

    // Into the running program's database, by the socket that its pid file names.
    string Beside() => new NpgsqlConnectionStringBuilder
    {
        Host = File.ReadLines(Path.Combine(scratch.Data, "cluster", "postmaster.pid")).ElementAt(4),
        Username = "rigging_admin",
        Database = "rigging",
        Pooling = false,
    }.ConnectionString;

    static async Task Execute(NpgsqlConnection connection, string sql)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(Ct);
    }

    static async Task SignIn(HttpClient http)
    {
        var answer = await Submit(http, "sign-in", new() { ["Form.Name"] = Email, ["Form.Password"] = Password });
        Assert.NotEqual("/sign-in", answer.RequestMessage!.RequestUri!.AbsolutePath);
    }

    static async Task<HttpResponseMessage> Submit(HttpClient http, string path, Dictionary<string, string> typed)
    {
        var page = await new HtmlParser().ParseDocumentAsync(await http.GetStringAsync(new Uri(path, UriKind.Relative), Ct));
        foreach (var field in page.QuerySelectorAll("main form input[type=hidden]")) typed[field.GetAttribute("name")!] = field.GetAttribute("value") ?? "";
        using var body = new FormUrlEncodedContent(typed);
        return await http.PostAsync(new Uri(path, UriKind.Relative), body, Ct);
    }

    Process Start() => Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "rigging.dll"), "serve", "--port", "0", "--no-demo", "--data", scratch.Data])
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;

    static async Task<Uri> AddressOf(Process host)
    {
        const string greeting = "Rigging is at ";
        while (await host.StandardOutput.ReadLineAsync(Ct) is { } line)
            if (line.StartsWith(greeting, StringComparison.Ordinal)) return new(line[greeting.Length..]);
        throw new InvalidOperationException("It did not start: " + await host.StandardError.ReadToEndAsync(Ct));
    }

    public void Dispose() => scratch.Dispose();
}
