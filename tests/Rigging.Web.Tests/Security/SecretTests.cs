using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Rigging.Squawks.People;
using Rigging.Storage.Doors;
using Rigging.Storage.Tests;

namespace Rigging.Web.Tests.Security;

/// <summary>Secrets stand neither in the log, however talkative, nor in the list of security events.</summary>
public sealed class SecretTests(Postgres postgres)
{
    const string Olaf = "olaf@school.example";
    const string Wrong = "not-the-password-of-olaf";

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Neither_passwords_nor_cookies_nor_links_are_logged_and_the_events_are_told_without_them()
    {
        var said = new Memory();
        await using var site = await TestSite.Start(postgres, change: services =>
        {
            services.AddSingleton<ILoggerProvider>(said);
            services.Configure<LoggerFilterOptions>(filter => filter.MinLevel = LogLevel.Trace);
        });
        await site.AddSchool();
        await site.AddPerson("Olaf Office", Olaf, [Authority.Office]);
        await site.AddPerson("Mira Mechanic", "mira@school.example", [Authority.Mechanic]);
        using (var stranger = site.Browser())
        {
            await stranger.Submit(await stranger.Open("/sign-in"), new() { ["Form.Name"] = Olaf, ["Form.Password"] = Wrong });
            await stranger.Submit(await stranger.Open("/sign-in"), new() { ["Form.Name"] = "who@school.example", ["Form.Password"] = Wrong });
        }
        using var olaf = await site.SignedIn(Olaf);
        var made = await olaf.Submit(await olaf.Open("/people/2"), [], "form:has(input[value=invite])");
        var code = made.Document.QuerySelector("a[href^='invitation?code=']")!.GetAttribute("href")!.Split('=')[1];

        var list = await olaf.Open("/security");

        Assert.NotEmpty(said.Lines);
        string[] secrets = [TestSite.Password, Wrong, code, .. olaf.Cookies.Split("; ").Select(cookie => cookie.Split('=', 2)[1]).Where(value => value.Length > 20)];
        Assert.Equal(5, secrets.Length);
        Assert.All(secrets, secret =>
        {
            Assert.DoesNotContain(said.Lines, line => line.Contains(secret, StringComparison.Ordinal));
            Assert.DoesNotContain(secret, list.Text, StringComparison.Ordinal);
        });
        Assert.DoesNotContain("who@school.example", list.Text, StringComparison.Ordinal);
        await using var db = site.OpenDatabase();
        var kinds = await db.Set<SecurityEventRow>().OrderBy(happened => happened.Id).Select(happened => happened.Kind).ToListAsync(Ct);
        Assert.Equal([SecurityEventKind.SignInFailed, SecurityEventKind.SignInFailed, SecurityEventKind.SignedIn, SecurityEventKind.InvitationMade], kinds);
    }

    [Fact]
    public async Task The_list_is_for_the_office_and_goes_as_a_file_that_no_spreadsheet_runs()
    {
        await using var site = await TestSite.Start(postgres);
        await site.AddSchool();
        await site.AddPerson("Olaf Office", Olaf, [Authority.Office]);
        await site.AddPerson("=cmd|' /C calc'!A0", "mira@school.example", [Authority.Mechanic]);
        using var mira = await site.SignedIn("mira@school.example");
        using var olaf = await site.SignedIn(Olaf);

        Assert.Contains("for the maintenance office", (await mira.Open("/security")).Text, StringComparison.Ordinal);
        Assert.NotEqual(System.Net.HttpStatusCode.OK, (await mira.Open("/security.csv")).Status);
        var csv = await olaf.Http.GetStringAsync(new Uri("/security.csv", UriKind.Relative), Ct);
        Assert.Contains(",signed in,\"'=cmd|' /C calc'!A0\",\"'=cmd|' /C calc'!A0\",", csv, StringComparison.Ordinal);
        Assert.StartsWith("number,at,event,whom,by,address,about\r\n", csv, StringComparison.Ordinal);
    }

    /// <summary>Remembers everything that is logged, scopes included.</summary>
    sealed class Memory : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<string> Lines { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state) where TState : notnull
        {
            Lines.Enqueue(state.ToString() ?? "");
            return null;
        }

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Lines.Enqueue(formatter(state, exception) + exception);

        public void Dispose()
        {
        }
    }
}
