using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Rigging.Storage.Tests;
using Rigging.Web.Commands;

namespace Rigging.Web.Tests.Commands;

/// <summary>The program as a person starts it: a process of its own with a private cluster below it.</summary>
public sealed class HostProcessTests : IDisposable
{
    readonly string data = Directory.CreateTempSubdirectory("rigging-test-").FullName;

    // Another account has to walk through to its own folder.
    public HostProcessTests()
    {
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(data, (UnixFileMode)0b111_101_101);
    }

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_migrates_keeps_published_passwords_at_home_serves_survives_a_kill_and_stops_when_asked()
    {
        var (unready, said) = await Finish(Start("serve", "--port", "0"));
        Assert.Equal(2, unready);
        Assert.Contains("Run 'rigging migrate' first", said, StringComparison.Ordinal);

        var (migrated, _) = await Finish(Start("migrate"));
        Assert.Equal(0, migrated);

        var (published, wanted) = await Finish(Start("serve", "--port", "0", "--public-url", "https://rigging.example"));
        Assert.Equal(2, published);
        Assert.Contains("wanted: also --no-demo", wanted, StringComparison.Ordinal);

        using (var killed = Start("serve", "--port", "0", "--no-demo"))
        {
            await Ready(await AddressOf(killed));
            killed.Kill();
            await killed.WaitForExitAsync(Ct);
        }

        using var host = Start("serve", "--port", "0", "--no-demo");
        await Ready(await AddressOf(host));
        var (refused, inUse) = await Finish(Start("migrate"));
        Assert.Equal(2, refused);
        Assert.Contains("in use by another Rigging", inUse, StringComparison.Ordinal);
        await Stop(host);
        Assert.Equal(0, host.ExitCode);
        Assert.False(File.Exists(Path.Combine(data, "d", "cluster", "postmaster.pid")));

        var (verified, summary) = await Finish(Start("verify"));
        Assert.Equal(0, verified);
        Assert.Contains("0 ledgers with 0 entries, 0 broken; 0 seals, 0 broken.", summary, StringComparison.Ordinal);
    }

    /// <summary>Every command that the help names, each as a process of its own; those that a school needs every day beside the running site.</summary>
    [Fact]
    public async Task Every_command_of_the_help_does_what_it_says_beside_the_running_site_where_it_can()
    {
        var named = Options.Usage.Split('\n').Select(line => Regex.Match(line, "^  ([a-z]+)\\b")).Where(match => match.Success).Select(match => match.Groups[1].Value).ToHashSet();
        string File(string name) => Path.Combine(data, name);
        async Task Does(int code, string says, string[] line, string typed = "")
        {
            named.Remove(line[0]);
            var (ended, said) = await Finish(Start(line), typed);
            Assert.True(ended == code, $"rigging {string.Join(' ', line)} ended with {ended}: {said}");
            Assert.Contains(says, said, StringComparison.Ordinal);
        }

        await Does(2, "holds no data of Rigging", ["verify"]);
        Assert.False(Directory.Exists(Path.Combine(data, "d")));
        await Does(0, "up to date", ["migrate"]);
        using (var host = Start("serve", "--port", "0"))
        {
            named.Remove("serve");
            await AddressOf(host);
            await Does(0, "0 broken", ["verify"]);
            await Does(0, "Rigging seal, form 1", ["seal"]);
            await System.IO.File.WriteAllTextAsync(File("kept.txt"), (await Finish(Start("seal"))).Said, Ct);
            // The one stored and the one kept.
            await Does(0, "2 seals, 0 broken", ["verify", "--seal", File("kept.txt")]);
            await Does(0, "SHA-256", ["export", "squawk", "1", File("one.zip")]);
            await Does(0, "SHA-256", ["export", "aircraft", "QRA-101", File("aircraft.zip")]);
            await Does(0, "SHA-256", ["export", "all", File("all.zip")]);
            await Does(0, "everything of", ["verify", File("all.zip")]);
            await Does(0, "projections written, 0 ledgers unreadable", ["rebuild"]);
            await Does(2, "wanted: erase P-N", ["erase"]);
            await Does(2, "nobody of that number", ["erase", "P-999"]);
            await Does(2, "Close the account first", ["erase", "P-1"], "whoever");
            var name = await Ask("update person set left_at = now() where number = 1 returning name");
            await Does(2, "is not the name", ["erase", "P-1"], "Somebody Else");
            await Does(0, "P-1 is erased.", ["erase", "P-1"], name);
            Assert.EndsWith("(erased)", await Ask("select name from person where number = 1"), StringComparison.Ordinal);
            await Does(0, "0 broken", ["verify"]);
            await Does(2, "in use by another Rigging", ["database"]);
            await Stop(host);
        }
        await Does(0, "dbname=rigging", ["database"]);
        await Does(0, "0 broken", ["verify"]);
        Assert.Empty(named);
    }

    /// <summary>Root starts it; what faces people is somebody else, like the database below it.</summary>
    [Fact]
    public async Task The_site_does_not_run_as_root_and_its_database_comes_back_when_it_is_killed()
    {
        await Finish(Start("migrate"));
        using var host = Start("serve", "--port", "0", "--no-demo");
        var address = await AddressOf(host);
        var (web, server) = (UserOf(host.Id), Server);
        Assert.Equal(UserOf(server), web);
        Assert.NotEqual("0", web);

        using (var killed = Process.GetProcessById(server)) killed.Kill();

        Assert.Contains("ended by itself", await host.StandardError.ReadLineAsync(Ct), StringComparison.Ordinal);
        Assert.Equal("rigging: The private database runs again.", await host.StandardError.ReadLineAsync(Ct));
        Assert.NotEqual(server, Server);
        await Ready(address);
        Assert.Equal(web, UserOf(Server));
        await Stop(host);
        Assert.Equal(0, host.ExitCode);
    }

    /// <summary>It takes every question and answers none, for ever: the client's own limit here is far above what people are promised, and far below for ever.</summary>
    [Fact]
    public async Task A_frozen_database_is_told_and_when_it_thaws_the_site_goes_on()
    {
        await Finish(Start("migrate"));
        using var host = Start("serve", "--port", "0", "--no-demo");
        using var client = new HttpClient { BaseAddress = await AddressOf(host), Timeout = TimeSpan.FromSeconds(20) };
        var server = Server;
        var all = System.IO.File.ReadAllText($"/proc/{server}/task/{server}/children").Split(' ', StringSplitOptions.RemoveEmptyEntries).Prepend($"{server}").ToArray();
        await Send("-STOP", all);
        try
        {
            foreach (var path in (string[])["health/ready", "setup", "health/ready", "sign-in"])
            {
                using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), Ct);
                Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
            }
            Assert.Equal("Healthy", await client.GetStringAsync(new Uri("health/live", UriKind.Relative), Ct));
            using var style = await client.GetAsync(new Uri("tokens.css", UriKind.Relative), Ct);
            Assert.Equal(HttpStatusCode.OK, style.StatusCode);
        }
        finally
        {
            await Send("-CONT", all);
        }
        using var again = await client.GetAsync(new Uri("setup", UriKind.Relative), Ct);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        await Stop(host);
    }

    [Fact]
    public async Task A_wrong_option_ends_with_2_and_one_line()
    {
        var (code, said) = await Finish(Start("serve", "--port", "many"));

        Assert.Equal(2, code);
        Assert.StartsWith("rigging: --port many is not a port", said, StringComparison.Ordinal);
        Assert.Single(said.Trim().Split('\n'));
    }

    // postmaster.pid: pid, data folder, start time, port, socket folder, …
    string[] PidFile => System.IO.File.ReadAllLines(Path.Combine(data, "d", "cluster", "postmaster.pid"));

    int Server => int.Parse(PidFile[0], CultureInfo.InvariantCulture);

    async Task<string> Ask(string sql) => (string)(await Postgres.Ask($"Host={PidFile[4]};Username=rigging_admin;Database=rigging;Pooling=false", sql))!;

    static string UserOf(int pid) => System.IO.File.ReadLines($"/proc/{pid}/status").First(line => line.StartsWith("Uid:", StringComparison.Ordinal)).Split('\t')[2];

    static async Task Send(string signal, params string[] pids)
    {
        using var kill = Process.Start("kill", [signal, .. pids]);
        await kill.WaitForExitAsync(Ct);
    }

    static async Task Stop(Process host)
    {
        await Send("-TERM", $"{host.Id}");
        await host.WaitForExitAsync(Ct);
    }

    Process Start(params string[] line)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "rigging.dll");
        return Process.Start(new ProcessStartInfo("dotnet", [program, .. line, "--data", Path.Combine(data, "d")])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
    }

    static async Task<(int Code, string Said)> Finish(Process process, string typed = "")
    {
        using (process)
        {
            if (typed.Length > 0) await process.StandardInput.WriteLineAsync(typed);
            process.StandardInput.Close();
            var output = process.StandardOutput.ReadToEndAsync(Ct);
            var errors = process.StandardError.ReadToEndAsync(Ct);
            await process.WaitForExitAsync(Ct);
            return (process.ExitCode, await output + await errors);
        }
    }

    static async Task<Uri> AddressOf(Process host)
    {
        const string greeting = "Rigging is at ";
        while (await host.StandardOutput.ReadLineAsync(Ct) is { } line)
            if (line.StartsWith(greeting, StringComparison.Ordinal))
                return new(line[greeting.Length..]);
        throw new InvalidOperationException("It did not start: " + await host.StandardError.ReadToEndAsync(Ct));
    }

    static async Task Ready(Uri address)
    {
        using var client = new HttpClient { BaseAddress = address };
        Assert.Equal("Healthy", await client.GetStringAsync(new Uri("health/ready", UriKind.Relative), Ct));
    }

    public void Dispose() => Directory.Delete(data, recursive: true);
}
