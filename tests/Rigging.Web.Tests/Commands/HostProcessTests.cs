using System.Diagnostics;

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
        var (refused, inUse) = await Finish(Start("verify"));
        Assert.Equal(2, refused);
        Assert.Contains("in use by another Rigging", inUse, StringComparison.Ordinal);
        using (var terminate = Process.Start("kill", ["-TERM", $"{host.Id}"]))
            await terminate.WaitForExitAsync(Ct);
        await host.WaitForExitAsync(Ct);
        Assert.Equal(0, host.ExitCode);
        Assert.False(File.Exists(Path.Combine(data, "d", "cluster", "postmaster.pid")));

        var (verified, summary) = await Finish(Start("verify"));
        Assert.Equal(0, verified);
        Assert.Contains("0 ledgers with 0 entries, 0 broken; 0 seals, 0 broken.", summary, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_option_ends_with_2_and_one_line()
    {
        var (code, said) = await Finish(Start("serve", "--port", "many"));

        Assert.Equal(2, code);
        Assert.StartsWith("rigging: --port many is not a port", said, StringComparison.Ordinal);
        Assert.Single(said.Trim().Split('\n'));
    }

    Process Start(params string[] line)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "rigging.dll");
        return Process.Start(new ProcessStartInfo("dotnet", [program, .. line, "--data", Path.Combine(data, "d")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
    }

    static async Task<(int Code, string Said)> Finish(Process process)
    {
        using (process)
        {
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
