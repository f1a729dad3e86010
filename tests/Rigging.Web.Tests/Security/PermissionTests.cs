using System.Net;
using System.Security.Claims;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Office;
using Rigging.Web.Records;
using Rigging.Web.Security;

namespace Rigging.Web.Tests.Security;

/// <summary>Every use-case as every role, as a guest of another squawk, as a guest whose visit is over, and signed out. Who may is written in Data/permissions.csv.</summary>
[Collection(InTheHangar.Name)]
public sealed partial class PermissionTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    static readonly string[] Actors = ["pilot", "office", "mechanic", "inspector", "certifier", "guest of it", "guest of another", "visit over", "left", "signed out"];

    static readonly (string UseCase, Dictionary<string, bool> May)[] Table = [.. Read()];

    static IEnumerable<(string, Dictionary<string, bool>)> Read()
    {
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "permissions.csv")).Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split(',')).ToArray();
        Assert.Equal(["use case", .. Actors], rows[0]);
        return rows.Skip(1).Select(row => (row[0], Actors.Zip(row.Skip(1), (actor, cell) => (actor, cell switch { "yes" => true, "no" => false, _ => throw new FormatException($"{row[0]}: “{cell}”") })).ToDictionary()));
    }

    public static TheoryData<string, string> Cases => [.. Table.SelectMany(row => Actors.Select(actor => (row.UseCase, actor)))];

    [Fact]
    public void The_table_names_every_kind_of_entry_and_every_use_case_there_is() =>
        Assert.Equal(EntryCodec.Kinds.Concat(Others.Keys).Order(StringComparer.Ordinal), Table.Select(row => row.UseCase).Order(StringComparer.Ordinal));

    [Theory, MemberData(nameof(Cases))]
    public async Task Whoever_may_may_and_nobody_else(string useCase, string actor)
    {
        var may = Table.Single(row => row.UseCase == useCase).May[actor];
        var (here, id, stage) = await Squawk(useCase);
        await using var scope = hangar.Site.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Actor>().Is(await SignedIn(actor, id));
        // Signed out, ended or over: there is nobody to ask about, and a use-case says so by refusing to go on.
        try
        {
            var done = Others.TryGetValue(useCase, out var run) ? await run(new(scope.ServiceProvider, here)) : await Entry(scope.ServiceProvider, useCase, here, id, stage, may);
            Assert.Equal(may, done);
        }
        catch (InvalidOperationException nobody) when (nobody.Message == "Nobody is signed in.")
        {
            Assert.False(may);
            Assert.Contains(actor, (string[])["visit over", "left", "signed out"]);
        }
    }

    sealed record Asked(IServiceProvider Parts, int Squawk);

    /// <summary>What is asked of the site beside entries; true when it was done.</summary>
    static readonly Dictionary<string, Func<Asked, Task<bool>>> Others = new()
    {
        ["open the squawk"] = async asked => await asked.Parts.GetRequiredService<SquawkDesk>().Open(asked.Squawk, Ct) is not null,
        ["see it on the ramp"] = async asked => (await asked.Parts.GetRequiredService<Rigging.Web.Fleet.Ramp>().Show(Ct)).Strips.Any(strip => strip.Open.Any(open => open.Number == asked.Squawk)),
        ["see the school's aircraft"] = async asked => (await asked.Parts.GetRequiredService<Rigging.Web.Report.FileReport>().Show(visitor: false, Ct)).Count > 0,
        ["take records away"] = async asked => await asked.Parts.GetRequiredService<RecordsRoom>().Refused(Ct) is null,
        ["take lists away"] = async asked => await asked.Parts.GetRequiredService<Lists>().Squawks(Ct) is not null && await asked.Parts.GetRequiredService<Lists>().Aircraft(Ct) is not null
            && await asked.Parts.GetRequiredService<Lists>().Tools(Ct) is not null && await asked.Parts.GetRequiredService<Lists>().Dates(Ct) is not null,
        ["check the records"] = async asked => (await asked.Parts.GetRequiredService<RecordsRoom>().Check(Ct)).Refused is null,
        ["read the security events"] = async asked => await asked.Parts.GetRequiredService<SecurityEvents>().Show(null, Ct) is not null,
        ["take the security events away"] = async asked => await asked.Parts.GetRequiredService<SecurityEvents>().Csv(Ct) is not null,
        ["open a person's file"] = async asked => await asked.Parts.GetRequiredService<Accounts>().Show(1, Ct) is not null,
        ["add a person"] = async asked => Allowed((await asked.Parts.GetRequiredService<Accounts>().Add(new("Nobody", "paula@school.example", null, [Authority.Pilot], null), Ct)).Wrong),
        ["ask in a guest"] = async asked => Allowed((await asked.Parts.GetRequiredService<Accounts>().AskIn(new("Nobody", "paula@school.example", null, [Authority.Pilot], null), asked.Squawk, new(2030, 1, 1), Ct)).Wrong),
        ["make a way in"] = async asked => Allowed((await asked.Parts.GetRequiredService<Accounts>().Invite(9999, Ct)).Wrong),
        ["change who acts as what"] = async asked => Allowed(await asked.Parts.GetRequiredService<Accounts>().MayAct(9999, [Authority.Pilot], Ct)),
        ["end somebody's sessions"] = async asked => Allowed(await asked.Parts.GetRequiredService<Accounts>().EndSessions(9999, Ct)),
        ["close an account"] = async asked => Allowed(await asked.Parts.GetRequiredService<Accounts>().Close(9999, Ct)),
        ["reopen an account"] = async asked => Allowed(await asked.Parts.GetRequiredService<Accounts>().Reopen(9999, Ct)),
        ["rename a person"] = async asked => Allowed(await asked.Parts.GetRequiredService<Accounts>().Rename(9999, "Nobody", "Married.", Ct)),
        ["erase a person"] = async asked => Allowed(await asked.Parts.GetRequiredService<Accounts>().Erase(9999, "Nobody", Ct)),
        ["see what a tool touched"] = async asked => await asked.Parts.GetRequiredService<Touched>().ByTool(School.Wrench.Code, Ct) is not null,
        ["see what a manual touched"] = async asked => await asked.Parts.GetRequiredService<Touched>().ByManual(null, null, Ct) is not null,
        ["enter a certificate"] = async asked => Allowed(await asked.Parts.GetRequiredService<OfficeBooks>().AddCertificate(9999, new("mechanic-airframe", "Q-1", null, null, null, null), Ct)),
        ["enter an airframe"] = async asked => Allowed(await asked.Parts.GetRequiredService<OfficeBooks>().AddAirframe("{}", Ct)),
        ["enter an aircraft"] = async asked => Allowed(await asked.Parts.GetRequiredService<OfficeBooks>().KeepAircraft("Q-NONE", "1", "no-such", 1, 1, null, null, Ct)),
        ["enter a tool"] = async asked => Allowed(await asked.Parts.GetRequiredService<OfficeBooks>().KeepTool(new() { Code = "TW-77", Kind = "torque-wrench", Description = "for this test" }, Ct)),
        ["demand passkeys"] = async asked => Allowed(await asked.Parts.GetRequiredService<OfficeBooks>().DemandPasskeys(false, Ct)),
    };

    // The use-case went past its question who asks: what it then says about nonsense is another matter.
    static bool Allowed(IReadOnlyList<BrokenRule> wrong) => !wrong.Any(rule => rule.Code == "no-authority");

    static readonly string[] NotYours = ["no-authority", "guest-of-another-squawk", "guest-expired", "person-left"];

    async Task<bool> Entry(IServiceProvider parts, string kind, int number, SquawkId id, Ledger ledger, bool may)
    {
        var desk = parts.GetRequiredService<SquawkDesk>();
        var fact = MovesOnPaper.Example(kind);
        if (kind == "report" || !may)
        {
            // Whoever may not goes round the page: the entry itself is refused, and nothing is written.
            var outcome = kind == "report" ? await desk.File(new(Guid.CreateVersion7()), (Reported)fact with { Aircraft = ledger.State.Report!.Aircraft }, Ct)
                : MoveTable.IsSigned(fact.GetType()) ? await desk.Sign(id, ledger.Length, fact, new("password", hangar.Site.Clock.GetCurrentInstant(), "", ""), Ct) : await desk.Append(id, ledger.Length, fact, Ct);
            if (!may) Assert.Equal(ledger.Length, (await hangar.Ledger(number)).Length);
            return outcome is Outcome.Appended || (outcome is Outcome.Refused refused && !refused.Broken.Any(rule => NotYours.Contains(rule.Code)));
        }
        return !(await desk.Open(number, Ct))!.WhatBlocks(fact.GetType()).Any(rule => NotYours.Contains(rule.Code));
    }

    static readonly Dictionary<string, (int, SquawkId, Ledger)> Standing = [];

    /// <summary>A squawk at a stage where such an entry has a place; one for all actors, since none of them gets as far as adding to it.</summary>
    async Task<(int, SquawkId, Ledger)> Squawk(string useCase)
    {
        var kind = Others.ContainsKey(useCase) ? "note" : useCase;
        if (Standing.TryGetValue(kind, out var known)) return known;
        var stage = MoveTable.Rows.First(row => row.Kind == EntryCodec.TypeOf(kind)).At.Order().FirstOrDefault(Stage.Reported);
        var number = await hangar.Squawk(kind == "resumed" ? School.Called.Do(School.Office, new Waiting(WaitingFor.Parts, "A bushing.")) : School.At(stage));
        var ledger = await hangar.Ledger(number);
        return Standing[kind] = (number, ledger.Id, ledger);
    }

    async Task<ClaimsPrincipal> SignedIn(string actor, SquawkId here)
    {
        var person = actor switch
        {
            "pilot" => School.Pilot.Id,
            "office" => School.Office.Id,
            "mechanic" => await Somebody("Max Mechanic", [Authority.Mechanic]),
            "inspector" => School.Inspector.Id,
            "certifier" => School.Certifier.Id,
            "guest of it" => await Somebody($"Guest {here}", Every, here, TestSite.Noon + NodaTime.Duration.FromDays(1)),
            "guest of another" => await Somebody("Guest elsewhere", Every, (await hangar.Ledger(await hangar.Squawk(School.Called))).Id, TestSite.Noon + NodaTime.Duration.FromDays(1)),
            "visit over" => await Somebody($"Guest once {here}", Every, here, TestSite.Noon - NodaTime.Duration.FromDays(1)),
            "left" => await Somebody("Lena Left", [.. Enum.GetValues<Authority>()], left: true),
            _ => default(PersonId?),
        };
        if (person is not { } who) return new(new ClaimsIdentity());
        var session = await hangar.Site.Services.GetRequiredService<Sessions>().Begin(who, "test", null, null, Ct);
        return new(new ClaimsIdentity([new Claim(Actor.PersonClaim, who.ToString()), new Claim(Sessions.Claim, session.ToString())], "test"));
    }

    static readonly Authority[] Every = [Authority.Pilot, Authority.Mechanic, Authority.Inspector, Authority.Certifier];

    async Task<PersonId> Somebody(string name, Authority[] authorities, SquawkId? guestOf = null, NodaTime.Instant? until = null, bool left = false)
    {
        await using var db = hangar.Site.OpenDatabase();
        if (await db.People.Where(row => row.Name == name).Select(row => (PersonId?)row.Id).SingleOrDefaultAsync(Ct) is { } known) return known;
        var row = new Storage.School.PersonRow
        {
            Number = await db.People.MaxAsync(person => person.Number, Ct) + 1,
            Name = name,
            GuestOf = guestOf,
            GuestUntil = until,
            LeftAt = left ? TestSite.Noon : null,
            Authorities = [.. authorities.Select(authority => new Storage.School.PersonAuthorityRow { Authority = authority })],
            Certificates = [.. ((string[])["mechanic-airframe", "private-pilot"]).Select(kind => new Storage.School.CertificateRow { Kind = kind, Number = "INV", RecentUntil = new(2030, 1, 1) })],
        };
        db.People.Add(row);
        await db.SaveChangesAsync(Ct);
        return row.Id;
    }

    /// <summary>Addresses that answer somebody who is not signed in.</summary>
    static readonly string[] OpenToAnybody = ["/sign-in", "/setup", "/not-found", "/invitation", "/cockpit/", "/receipt/", "/sign-out", "/passkeys/ask", "/api/", "/openapi", "/_blazor", "/_framework", "/health", "/Error"];

    [Fact]
    public async Task Nobody_who_is_not_signed_in_gets_past_the_door_at_any_address_there_is()
    {
        var asked = 0;
        using var stranger = hangar.Site.Browser();
        foreach (var (method, address) in Endpoints("1"))
        {
            if (OpenToAnybody.Any(open => address.StartsWith(open, StringComparison.Ordinal))) continue;
            var answer = await stranger.Http.SendAsync(new(method, new Uri(address, UriKind.Relative)), Ct);
            Assert.True(answer.StatusCode == HttpStatusCode.Unauthorized || (answer.StatusCode == HttpStatusCode.Redirect && answer.Headers.Location!.AbsolutePath == "/sign-in"), $"{method} {address}: {answer.StatusCode}");
            asked++;
        }
        Assert.True(asked > 40, $"Only {asked} addresses were tried.");
    }

    [Fact]
    public async Task A_guest_finds_nothing_but_the_one_squawk_at_any_address_there_is()
    {
        var (own, other) = (await hangar.Squawk(School.Judged), await hangar.Squawk(School.Judged));
        var email = $"guest{own}@elsewhere.example";
        var guest = await hangar.Site.AddPerson("Gerd Guest", email, Every);
        await using (var db = hangar.Site.OpenDatabase())
            await db.People.Where(row => row.Id == guest).ExecuteUpdateAsync(set => set
                .SetProperty(row => row.GuestOf, db.Squawks.Where(squawk => squawk.Number == own).Select(squawk => (SquawkId?)squawk.Id).Single())
                .SetProperty(row => row.GuestUntil, TestSite.Noon + NodaTime.Duration.FromDays(1)), Ct);
        using var browser = await hangar.Site.SignedIn(email);
        var tried = 0;
        foreach (var (method, address) in Endpoints($"{other}"))
        {
            if (method != HttpMethod.Get || OpenToAnybody.Append("/account").Append("/drafts").Any(open => address.StartsWith(open, StringComparison.Ordinal))) continue;
            var answer = await browser.Open(address);
            Assert.True(answer.Status == HttpStatusCode.NotFound || (address == "/" && answer.Location == $"/squawks/{own}"), $"{address}: {answer.Status} {answer.Text}");
            tried++;
        }
        Assert.True(tried > 30, $"Only {tried} addresses were tried.");
        Assert.Equal(HttpStatusCode.OK, (await browser.Open($"/squawks/{own}/verdict")).Status);
        Assert.Equal(HttpStatusCode.OK, (await browser.Open($"/squawks/{own}/record.pdf")).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await browser.Open($"/squawks/{own}/bundle.zip")).Status);
    }

    [Fact]
    public async Task Nobody_reads_what_somebody_else_has_typed()
    {
        using var mechanic = await hangar.As(School.Mechanic);
        using var inspector = await hangar.As(School.Inspector);
        await using (var scope = hangar.Site.Services.CreateAsyncScope())
            await scope.ServiceProvider.GetRequiredService<Drafts>().Save(School.Mechanic.Id, "note:4711", """{"text":"mine"}""", Ct);

        Assert.Contains("mine", await mechanic.Http.GetStringAsync(new Uri("/drafts/note:4711", UriKind.Relative), Ct), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NoContent, (await inspector.Open("/drafts/note:4711")).Status);
    }

    /// <summary>Every address of the site with this squawk number in it, and how it is asked.</summary>
    IEnumerable<(HttpMethod, string)> Endpoints(string squawk) =>
        from endpoint in hangar.Site.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        where endpoint.Metadata.GetMetadata<Microsoft.AspNetCore.StaticAssets.StaticAssetDescriptor>() is null
        where !endpoint.RoutePattern.RawText!.StartsWith("{*", StringComparison.Ordinal)
        let pattern = "/" + endpoint.RoutePattern.RawText!.TrimStart('/')
        let address = Parameter().Replace(pattern, match => match.Groups[1].Value switch
        {
            "kind" or "Kind" => "work-done",
            "registration" or "Registration" => "Q-NONE",
            "key" => "report",
            "Number" or "number" when !pattern.StartsWith("/squawks", StringComparison.Ordinal) => "1",
            _ => squawk,
        })
        from method in (endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET"]).Where(method => method is "GET" or "POST").Distinct()
        select (new HttpMethod(method), address);

    [System.Text.RegularExpressions.GeneratedRegex(@"\{\*?\*?(\w+)[^}]*\}")]
    private static partial System.Text.RegularExpressions.Regex Parameter();
}
