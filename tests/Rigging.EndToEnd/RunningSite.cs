using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Rigging.EndToEnd.RunningSite))]

namespace Rigging.EndToEnd;

/// <summary>The program as a school runs it: its own process, a private PostgreSQL with durable settings, the invented school, and a real Chromium.</summary>
/// <remarks>
/// All tests share the school, in no order, and an open report keeps its aircraft down: what reports does so on QTA-201 or QTB-202, the journeys on QRA-101 and QVA-301;
/// QRB-102 and QRC-103 stay free to be flown. Entries are added to QRC-103's squawk by LiveTests only: a page that another test overtakes is told so, and does nothing else.
/// </remarks>
public sealed class RunningSite : IAsyncLifetime
{
    static readonly TimeSpan StartsWithin = TimeSpan.FromMinutes(3);

    readonly string data = Directory.CreateTempSubdirectory("rigging-e2e-").FullName;
    Process? program;
    IPlaywright? playwright;

    public string Address { get; private set; } = "";

    public IBrowser Browser { get; private set; } = null!;

    /// <summary>The newest squawk of each aircraft, as the invented school has it before anybody adds to it.</summary>
    public IReadOnlyDictionary<string, int> Numbers { get; private set; } = new Dictionary<string, int>();

    readonly ConcurrentDictionary<string, string> signedIn = [];

    public async ValueTask InitializeAsync()
    {
        await Migrate();
        program = Start("serve", "--port", "0");
        Address = await AddressOf(program);
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Chromium(),
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        Numbers = await ReadNumbers();
    }

    /// <summary>Somebody who signed in before: their cookies, so that not every test types a password.</summary>
    public async Task<string> Cookies(string email)
    {
        if (signedIn.TryGetValue(email, out var known)) return known;
        var visitor = await Visitor.Arrives(this, email, 390, 844);
        var state = await visitor.Page.Context.StorageStateAsync();
        await visitor.Page.Context.CloseAsync();
        return signedIn[email] = state;
    }

    /// <summary>The process of the database now, as its pid file names it; 0 while there is none.</summary>
    public int Database => Path.Combine(data, "cluster", "postmaster.pid") is var file && File.Exists(file) && int.TryParse(File.ReadLines(file).FirstOrDefault(), out var pid) ? pid : 0;

    public int KillDatabase()
    {
        using var server = Process.GetProcessById(Database);
        server.Kill();
        return server.Id;
    }

    async Task<Dictionary<string, int>> ReadNumbers()
    {
        var office = await Visitor.Arrives(this, "mina@quietvalley.example", 390, 844);
        Dictionary<string, int> numbers = [];
        foreach (var registration in (string[])["QRA-101", "QRB-102", "QRC-103", "QRD-104", "QTA-201", "QTB-202", "QVA-301"])
        {
            await office.Goes($"/aircraft/{registration}");
            numbers[registration] = int.Parse((await office.Page.Locator(".past .number").First.InnerTextAsync())[2..], System.Globalization.CultureInfo.InvariantCulture);
        }
        await office.Page.Context.CloseAsync();
        return numbers;
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null) await Browser.DisposeAsync();
        playwright?.Dispose();
        if (program is { HasExited: false })
        {
            // In good order, so that the cluster below it stops too; whoever runs this in the background may have made it deaf to Ctrl-C.
            using (var interrupt = Process.Start("kill", ["-TERM", program.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)])) await interrupt.WaitForExitAsync();
            await program.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(30));
        }
        program?.Dispose();
        Directory.Delete(data, recursive: true);
    }

    async Task Migrate()
    {
        using var migrate = Start("migrate");
        var said = await migrate.StandardOutput.ReadToEndAsync();
        await migrate.WaitForExitAsync();
        Assert.True(migrate.ExitCode == 0, said);
    }

    Process Start(params string[] command)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, UseShellExecute = false };
        foreach (var word in (string[])[Path.Combine(AppContext.BaseDirectory, "rigging.dll"), .. command, "--data", data]) start.ArgumentList.Add(word);
        return Process.Start(start)!;
    }

    static async Task<string> AddressOf(Process program)
    {
        using var limit = new CancellationTokenSource(StartsWithin);
        List<string> said = [];
        while (await program.StandardOutput.ReadLineAsync(limit.Token) is { } line)
        {
            said.Add(line);
            if (line.StartsWith("Rigging is at ", StringComparison.Ordinal))
            {
                // Read on, so that the program never waits for a reader.
                _ = program.StandardOutput.BaseStream.CopyToAsync(Stream.Null, CancellationToken.None);
                return line["Rigging is at ".Length..].Trim();
            }
        }
        throw new InvalidOperationException($"The program ended before it served: {string.Join('\n', said)}");
    }

    static string Chromium() => new[] { Environment.GetEnvironmentVariable("RIGGING_CHROMIUM"), "/usr/bin/chromium-headless-shell", "/usr/bin/chromium-headless-shell", "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome" }
        .FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("No Chromium found: install the package 'chromium-headless-shell', or name it in RIGGING_CHROMIUM.");
}
