using System.Diagnostics;
using System.Globalization;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Identity;
using Npgsql;
using Rigging.Squawks.Entries;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;
using Rigging.Storage.Ledgers;
using Rigging.Storage.School;
using Rigging.Storage.Tests;
using Rigging.Storage.Tests.Cluster;
using Rigging.Storage.Tests.Faults;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Web.Tests.Faults;

/// <summary>The whole program, its private database below it, killed while people send forms; what they were answered is compared with what is there.</summary>
public sealed class KilledHostTests : IDisposable
{
    enum Moment { HalfWay, AfterCommit, AnyTime, AnyTimeWithItsDatabase }

    const string Email = "paula@school.example";
    const string Password = "a-password-for-tests";

    readonly ScratchFolder scratch = new();
    readonly HttpClient http = new();   // signed in once: sessions survive too
    readonly Random chance = new(7);
    readonly Told told = new();
    Uri site = null!;

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_answered_is_there_once_and_nothing_is_half_written()
    {
        await SchoolWithASquawk();
        for (var round = 0; round < Rounds.Of(4); round++)
        {
            using var host = Start();
            site = await AddressOf(host);
            if (round == 0) await SignIn();
            else await Compare(round - 1, Server.Socket);
            await Strike(round, host);
            await host.WaitForExitAsync(Ct);
            NpgsqlConnection.ClearAllPools();
        }
        await using var cluster = await PrivateCluster.Start(scratch.Data, Ct);
        await Compare(Rounds.Of(4) - 1, Server.Socket);
        NpgsqlConnection.ClearAllPools();
    }

    static Moment MomentOf(int round) => (Moment)(round % 4);

    async Task Strike(int round, Process host)
    {
        if (MomentOf(round) is Moment.HalfWay or Moment.AfterCommit)
        {
            // After the commit, before anybody read the answer: the entry is seen in the database first.
            var half = MomentOf(round) == Moment.HalfWay;
            // Not pooled: the server goes down with the host, and a pooled connection would talk to it once more when it is given back.
            await using var beside = new NpgsqlConnection(At(Server.Socket).Admin + ";Pooling=false");
            await beside.OpenAsync(Ct);
            await using var hold = new NpgsqlCommand("begin; lock table squawk in share mode", beside);
            if (half) await hold.ExecuteNonQueryAsync(Ct);
            var sent = Send($"round {round}, alone");
            await Told.Until(beside, half ? Told.SomebodyWaitsForTheProjection : $"exists (select from ledger_entry where payload_json -> 'fact' ->> 'text' = 'round {round}, alone')", Ct);
            host.Kill();
            await sent;
            return;
        }
        var enough = told.Another(chance.Next(1, 12));
        using var over = new CancellationTokenSource();
        var clients = Enumerable.Range(0, 3).Select(async client =>
        {
            for (var n = 0; !over.IsCancellationRequested; n++) await Send($"round {round}, client {client}, {n}");
        }).ToList();
        await enough;
        var server = Server.Pid;
        host.Kill();
        if (MomentOf(round) == Moment.AnyTimeWithItsDatabase) Kill.Server(server);
        await over.CancelAsync();
        await Task.WhenAll(clients);
    }

    /// <summary>One note by form, as a browser sends it; acknowledged when the site leads on to the squawk.</summary>
    async Task Send(string text)
    {
        told.Sent(text);
        try
        {
            var answer = await Submit("squawks/1/other/note", new() { ["text"] = text, ["corrects"] = "" });
            if (answer.RequestMessage!.RequestUri!.AbsolutePath == "/squawks/1") told.Taken(text);
        }
        catch (HttpRequestException)
        {
            // No answer: it may or may not be there.
        }
    }

    async Task Compare(int round, string socket)
    {
        var school = new SchoolHouse(() => Task.FromResult(At(socket)));
        await school.Connect();
        await using var db = school.CreateDbContext();
        var squawk = db.Squawks.Single();
        var ledger = (await school.Ledgers.Load(squawk.Id, Ct))!;
        told.Compare(ledger, $"Round {round} ({MomentOf(round)})");
        if (MomentOf(round) is Moment.HalfWay or Moment.AfterCommit)
            Assert.Equal(MomentOf(round) == Moment.AfterCommit, ledger.Entries.Any(entry => entry.Fact is Noted note && note.Text == $"round {round}, alone"));
        var report = await school.Audit.Verify(Ct);
        Assert.True(report.Holds, string.Join('\n', report.Lines));
        Assert.Equivalent(SquawkRow.Of(ledger), squawk, strict: true);
    }

    async Task SchoolWithASquawk()
    {
        await using var cluster = await PrivateCluster.Start(scratch.Data, Ct);
        var database = At(Server.Socket);
        await DatabaseSetup.Prepare(database.Admin, ct: Ct);
        var school = new SchoolHouse(() => Task.FromResult(database));
        await school.InitializeAsync();
        await school.Walk();
        await using var db = school.CreateDbContext();
        var paula = new User { Id = Guid.NewGuid(), PersonId = school.Pilot, UserName = Email, NormalizedUserName = Email.ToUpperInvariant(), Email = Email, NormalizedEmail = Email.ToUpperInvariant(), SecurityStamp = "one" };
        paula.PasswordHash = new PasswordHasher<User>().HashPassword(paula, Password);
        db.Users.Add(paula);
        await db.SaveChangesAsync(Ct);
        NpgsqlConnection.ClearAllPools();
    }

    /// <summary>The running program's server, as its pid file names it: pid, data folder, start time, port, socket folder.</summary>
    (int Pid, string Socket) Server => File.ReadAllLines(Path.Combine(scratch.Data, "cluster", "postmaster.pid")) is var lines
        ? (int.Parse(lines[0], CultureInfo.InvariantCulture), lines[4]) : default;

    static TestDatabase At(string socket) => new(Of(socket, "rigging_admin"), Of(socket, DatabaseSetup.App));

    static string Of(string socket, string user) => new NpgsqlConnectionStringBuilder { Host = socket, Username = user, Database = "rigging" }.ConnectionString;

    async Task SignIn()
    {
        var answer = await Submit("sign-in", new() { ["Form.Name"] = Email, ["Form.Password"] = Password });
        Assert.NotEqual("/sign-in", answer.RequestMessage!.RequestUri!.AbsolutePath);
    }

    async Task<HttpResponseMessage> Submit(string path, Dictionary<string, string> typed)
    {
        var address = new Uri(site, path);
        var page = await new HtmlParser().ParseDocumentAsync(await http.GetStringAsync(address, Ct));
        foreach (var field in page.QuerySelector("main form")!.QuerySelectorAll("input[type=hidden]")) typed[field.GetAttribute("name")!] = field.GetAttribute("value") ?? "";
        using var body = new FormUrlEncodedContent(typed);
        return await http.PostAsync(address, body, Ct);
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

    public void Dispose()
    {
        http.Dispose();
        scratch.Dispose();
    }
}
