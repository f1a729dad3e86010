using MailKit.Security;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using MimeKit;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Signing;
using Rigging.Squawks.Rules;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Tests;
using Rigging.Web.Notices;

namespace Rigging.Web.Tests.Notices;

public sealed class PostmanTests(Postgres postgres) : IAsyncLifetime
{
    readonly MailCatcher catcher = new();
    TestSite site = null!;
    PersonId pilot, mechanic;
    AircraftId aircraft;

    public async ValueTask InitializeAsync()
    {
        site = await TestSite.Start(postgres);
        await Fill(site);
    }

    public async ValueTask DisposeAsync()
    {
        await site.DisposeAsync();
        await catcher.DisposeAsync();
    }

    async Task Fill(TestSite at)
    {
        await at.AddSchool();
        pilot = await at.AddPerson("Paula Pilot", "paula@school.example", [Authority.Pilot]);
        await at.AddPerson("Olaf Office", "olaf@school.example", [Authority.Office]);
        mechanic = await at.AddPerson("Mira Mechanic", "mira@school.example", [Authority.Mechanic, Authority.Inspector]);
        aircraft = new(Guid.CreateVersion7());
        await using var db = at.OpenDatabase();
        db.Airframes.Add(new() { Id = "st2", Version = 1, Name = "ST-2", Json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "seed-data", "airframes", "st2.json")), EnteredAt = TestSite.Noon });
        db.Aircraft.Add(new() { Id = aircraft, Registration = "QRA-101", Serial = "7", AirframeId = "st2", AirframeVersion = 1, TotalTimeTenths = 10 });
        await db.SaveChangesAsync();
    }

    Postman Postman(TestSite? at = null) => new(
        new("127.0.0.1", catcher.Port, SecureSocketOptions.None, null, null, new MailboxAddress("Rigging", "rigging@school.example"), new("https://rigging.school.example")),
        (at ?? site).Services.GetRequiredService<Outbox>(), (at ?? site).Services.GetRequiredService<LedgerListener>(), (at ?? site).Clock, NullLogger<Postman>.Instance);

    async Task<Ledger> Report(TestSite? at = null, params RedFlag[] flags) => Grown(await Ledgers(at).File(pilot, new(
        0, aircraft, "Rolls left hands off.", Side.Left, RollStrength.Slowly, Hands.Released, Feet.BallCentred, null, null, null, null, null, null, null, null, null,
        FuelMethod.NotKnown, null, null, null, null, null, [], flags), CancellationToken.None));

    async Task<Ledger> Go(Ledger ledger, PersonId who, Fact fact)
    {
        var (_, facts) = (await Ledgers().Look(ledger.Id, who, CancellationToken.None))!.Value;
        var hash = SignedText.Sha256(Squawk.TextToSign(ledger, fact, facts));
        return Grown(await Ledgers().Append(ledger.Id, ledger.Length, who, fact, new("password", facts.Now, hash, hash), CancellationToken.None));
    }

    LedgerStore Ledgers(TestSite? at = null) => (at ?? site).Services.GetRequiredService<LedgerStore>();

    static Ledger Grown(Outcome outcome) => Assert.IsType<Outcome.Appended>(outcome).Ledger;

    IEnumerable<(string To, string Subject)> Came() => catcher.Mails.Select(mail => (mail.To.Mailboxes.Single().Address, mail.Subject ?? "")).OrderBy(mail => mail.Address);

    static Task<int> SendDue(Postman postman) => postman.SendDue(TestContext.Current.CancellationToken);

    [Fact]
    public async Task Filed_is_told_to_office_and_hangar_with_a_link()
    {
        await Report();

        Assert.Equal(2, await SendDue(Postman()));

        Assert.Equal([("mira@school.example", "S-1 QRA-101: a squawk was filed"), ("olaf@school.example", "S-1 QRA-101: a squawk was filed")], Came());
        var mail = catcher.Mails.First();
        Assert.Contains("The pilot wrote: Rolls left hands off.", mail.TextBody, StringComparison.Ordinal);
        Assert.Contains("https://rigging.school.example/squawks/1", mail.TextBody, StringComparison.Ordinal);
        Assert.Equal("auto-generated", mail.Headers["Auto-Submitted"]);
    }

    [Fact]
    public async Task Grounded_your_turn_and_back_in_service_are_told_to_whom_they_concern()
    {
        var ledger = await Report(flags: RedFlag.Bang);
        await SendDue(Postman());
        Assert.Equal(["mira@school.example", "olaf@school.example"], Came().Select(mail => mail.To));
        Assert.All(Came(), mail => Assert.Equal("S-1 QRA-101: grounded", mail.Subject));
        catcher.Mails.Clear();

        ledger = await Go(ledger, mechanic, new GroundChecked(Check.DamageInspection, null, null, true, null, null, null, null, null, null, "Nothing found.", null));
        await Go(ledger, mechanic, new Called(Call.NoRiggingHold, "Nothing found.", null));
        await SendDue(Postman());

        Assert.Contains(("paula@school.example", "S-1 QRA-101: back in service"), Came());
        Assert.Contains(("olaf@school.example", "S-1 QRA-101: your turn"), Came());
    }

    [Fact]
    public async Task Each_notice_is_sent_once()
    {
        await Report();

        Assert.Equal(2, await SendDue(Postman()));
        Assert.Equal(0, await SendDue(Postman()));

        Assert.Equal(2, catcher.Mails.Count);
    }

    [Fact]
    public async Task A_server_that_is_down_holds_up_no_entry_and_gets_everything_when_it_is_back()
    {
        catcher.Down = true;
        var postman = Postman();
        await Report();
        Assert.Equal(0, await SendDue(postman));
        // Not asked again before its time.
        Assert.Equal((0, 1), (await SendDue(postman), catcher.Calls));

        catcher.Down = false;
        Assert.Equal(0, await SendDue(postman));
        site.Clock.AdvanceMinutes(1);

        Assert.Equal(2, await SendDue(postman));
        await using var db = site.OpenDatabase();
        Assert.All(await db.Notices.ToListAsync(TestContext.Current.CancellationToken), notice => Assert.Equal((0, site.Clock.GetCurrentInstant()), (notice.Attempts, notice.SentAt)));
    }

    [Fact]
    public void The_pause_doubles_and_has_an_end() => Assert.Equal(
        [1, 2, 4, 8, 128, 240, 240], new[] { 1, 2, 3, 4, 8, 9, 500 }.Select(failures => Rigging.Web.Notices.Postman.BackOff(failures).TotalMinutes));

    [Theory]
    [InlineData("550 no such mailbox", Outbox.MostAttempts)]
    [InlineData("450 try again later", 1)]
    public async Task One_address_that_is_refused_does_not_hold_up_the_others(string answer, int attempts)
    {
        catcher.Refuses = ("mira@", answer);
        await Report();

        Assert.Equal(1, await SendDue(Postman()));

        Assert.Equal(["olaf@school.example"], Came().Select(mail => mail.To));
        await using var db = site.OpenDatabase();
        Assert.Equal(attempts, (await db.Notices.SingleAsync(notice => notice.PersonId == mechanic, TestContext.Current.CancellationToken)).Attempts);
    }

    [Fact]
    public async Task What_was_read_on_the_screen_is_not_mailed_as_well()
    {
        await Report();
        await using (var db = site.OpenDatabase())
            await db.Notices.Where(notice => notice.PersonId == mechanic).ExecuteUpdateAsync(set => set.SetProperty(notice => notice.ReadAt, TestSite.Noon), TestContext.Current.CancellationToken);

        await SendDue(Postman());

        Assert.Equal(["olaf@school.example"], Came().Select(mail => mail.To));
    }

    [Fact]
    public async Task A_server_set_up_today_does_not_send_last_weeks_news()
    {
        await Report();
        site.Clock.Advance(Outbox.News + Duration.FromMinutes(1));

        Assert.Equal(0, await SendDue(Postman()));
    }

    [Fact]
    public async Task The_invented_schools_people_get_no_mail()
    {
        await site.AddPerson("Demo Office", "demo@school.example", [Authority.Office], demo: true);
        await Report();

        await SendDue(Postman());

        Assert.DoesNotContain("demo@school.example", Came().Select(mail => mail.To));
    }

    [Fact]
    public async Task The_host_sends_by_itself_when_a_mail_server_is_named()
    {
        await using var sending = await TestSite.Start(postgres, settings: new()
        {
            ["Mail:Host"] = "127.0.0.1",
            ["Mail:Port"] = catcher.Port.ToString(System.Globalization.CultureInfo.InvariantCulture),
            ["Mail:From"] = "rigging@school.example",
            ["Mail:Security"] = "none",
        });
        await Fill(sending);
        await Report(sending);

        Assert.Equal("S-1 QRA-101: a squawk was filed", (await catcher.Next()).Subject);
        await catcher.Next();
    }
}
