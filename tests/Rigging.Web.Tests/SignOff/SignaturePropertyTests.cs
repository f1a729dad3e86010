using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.RuleSets;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.SignOff;

/// <summary>The list of what is asked of a signature, and the papers about security: every test they name exists. Beside that, the properties that no other test proves.</summary>
[Collection(InTheHangar.Name)]
public sealed partial class SignaturePropertyTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    static readonly string[] Sources = [.. Directory.EnumerateFiles(Path.Combine(Repository.Home, "tests"), "*.cs", SearchOption.AllDirectories).Select(File.ReadAllText)];

    static bool Exists(string test) => test.Split('.') is [var type, .. var method]
        && Sources.Any(source => Regex.IsMatch(source, $@"\bclass {type}\b"))
        && (method is [] || Sources.Any(source => source.Contains($" {method[0]}(", StringComparison.Ordinal) && Regex.IsMatch(source, $@"\bclass {type}\b")));

    public static TheoryData<string, string> Properties =>
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "signature-properties.csv")).Where(line => line.StartsWith('E')).Select(line => line.Split('|')).Select(parts => (parts[0], parts[2]))];

    [Fact]
    public void All_of_the_list_is_there() => Assert.Equal(21, Properties.Count);

    [Theory, MemberData(nameof(Properties))]
    public void Each_property_has_a_test_or_a_reason(string id, string proof) => Assert.True(
        proof.StartsWith("reason: ", StringComparison.Ordinal) || proof.Split(' ').All(Exists), $"{id}: {proof}");

    [Fact]
    public void Every_test_that_the_page_about_security_names_exists()
    {
        var named = TestName().Matches(File.ReadAllText(Path.Combine(Repository.Home, "docs", "security.md"))).Select(match => match.Groups[1].Value).Distinct().ToList();
        Assert.True(named.Count > 30);
        Assert.Equal([], named.Where(name => !Exists(name)));
    }

    [GeneratedRegex(@"`(\w*(?:Tests|Stories)(?:\.\w+)?)`")]
    private static partial Regex TestName();

    [Fact]
    public async Task One_address_is_one_person_and_a_leavers_id_is_not_given_out_again()
    {
        await using var scope = hangar.Site.Services.CreateAsyncScope();
        await using var db = hangar.Site.OpenDatabase();
        var users = scope.ServiceProvider.GetRequiredService<Microsoft.AspNetCore.Identity.UserManager<Storage.School.User>>();
        var before = await db.People.MaxAsync(person => person.Number, Ct);

        var (_, wrong) = await new Office.NewPerson("Paula Again", "PAULA@school.example", null, [Authority.Pilot], null).Enter(db, users, Ct);
        var (id, _) = await new Office.NewPerson("Once Here", "once@school.example", null, [Authority.Pilot], null).Enter(db, users, Ct);
        await db.People.Where(person => person.Id == id).ExecuteUpdateAsync(set => set.SetProperty(person => person.LeftAt, TestSite.Noon), Ct);
        var (next, _) = await new Office.NewPerson("After That", "after@school.example", null, [Authority.Pilot], null).Enter(db, users, Ct);

        Assert.Equal("email-taken", Assert.Single(wrong).Code);
        Assert.NotEqual(id, next);
        Assert.Equal(before + 2, await db.People.Where(person => person.Id == next).Select(person => person.Number).SingleAsync(Ct));
    }

    [Fact]
    public async Task A_signature_outlives_its_signers_password_and_employment()
    {
        var number = await hangar.Squawk(School.Worked);
        var before = EntryCodec.Write((await hangar.Ledger(number)).Entries[^1]);
        await using var db = hangar.Site.OpenDatabase();
        await db.Users.Where(user => user.PersonId == School.Mechanic.Id).ExecuteUpdateAsync(set => set.SetProperty(user => user.SecurityStamp, "changed"), Ct);
        using var inspector = await hangar.As(School.Inspector);
        try
        {
            await db.People.Where(person => person.Id == School.Mechanic.Id).ExecuteUpdateAsync(set => set.SetProperty(person => person.LeftAt, TestSite.Noon), Ct);

            Assert.Equal(before, EntryCodec.Write((await hangar.Ledger(number)).Entries[^1]));
            Assert.Equal(System.Net.HttpStatusCode.OK, (await inspector.Open($"/squawks/{number}/record.pdf")).Status);
            Assert.True((await hangar.Site.Services.GetRequiredService<Storage.Ledgers.LedgerAudit>().Verify(Ct)).Holds);
        }
        finally
        {
            await db.People.Where(person => person.Id == School.Mechanic.Id).ExecuteUpdateAsync(set => set.SetProperty(person => person.LeftAt, (NodaTime.Instant?)null), Ct);
        }
    }

    [Fact]
    public async Task A_persons_file_lists_all_that_was_signed_and_nothing_else()
    {
        var number = await hangar.Squawk(School.Closed);
        using var office = await hangar.As(School.Office);
        var people = await office.Open("/people");

        var file = await office.Open("/" + people.Document.QuerySelectorAll("tbody tr").Single(row => row.TextContent.Contains("Ines Inspector", StringComparison.Ordinal)).QuerySelector("a")!.GetAttribute("href"));

        var here = file.Document.QuerySelectorAll("li").Select(line => line.TextContent).Where(line => line.StartsWith($"S-{number},", StringComparison.Ordinal)).ToList();
        Assert.Equal(["closing", "independent inspection"], here.Select(line => line.Split(": ")[1].Split(" 20")[0]));
    }

    [Theory]
    [InlineData(null, "experience-not-stated")]
    [InlineData(-1, "experience-lapsed")]
    [InlineData(0, null)]
    public void Approval_needs_recent_experience_where_the_rule_set_asks_for_it(int? days, string? refused)
    {
        var certifier = School.Certifier with { Certificates = [School.Certifier.Certificates[0] with { RecentUntil = days is { } n ? School.Today.PlusDays(n) : null }] };

        var decision = School.Try(School.Inspected, certifier, School.Approval);

        Assert.Equal(refused, (decision as Decision.Refused)?.Broken.Single().Code);
        Assert.Null(RuleSet.Shipped["european-union"].RecentExperience);
    }
}
