using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;
using Rigging.Storage.Ledgers;
using Rigging.Storage.School;

namespace Rigging.Web.Tests.Records;

[Collection(InTheHangar.Name)]
public sealed class ErasureTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_erased_persons_name_is_nowhere_and_every_chain_and_signature_holds()
    {
        const string name = "Erna Erased";
        var who = await hangar.Site.AddPerson(name, "erna@school.example", [Authority.Inspector], certificates: [new CertificateRow { Kind = "mechanic-airframe", Number = "INV-ERNA-77" }]);
        var number = await hangar.Squawk(School.Worked);
        await hangar.Add(number, School.Inspector with { Id = who }, School.Inspection);
        var before = (await hangar.Ledger(number)).Entries.Select(EntryCodec.Write).ToList();
        using var erna = await hangar.Site.SignedIn("erna@school.example");
        using var office = await hangar.As(School.Office);
        Assert.Contains(name, (await office.Open("/people")).Text, StringComparison.Ordinal);
        await using var db = hangar.Site.OpenDatabase();
        var file = $"/people/{await db.People.Where(person => person.Id == who).Select(person => person.Number).SingleAsync(Ct)}";
        await office.Submit(await office.Open(file), new() { ["newName"] = "Erna Renamed", ["reason"] = "Married." }, "form:has(input[value=rename])");
        await office.Submit(await office.Open(file), new() { ["newName"] = name, ["reason"] = "A slip." }, "form:has(input[value=rename])");
        Assert.Contains("from Erna Renamed to Erna Erased, by Olaf Office. A slip.", (await office.Open(file)).Text, StringComparison.Ordinal);
        await office.Submit(await office.Open(file), [], "form:has(input[value=close])");

        var slip = await office.Submit(await office.Open(file), new() { ["name"] = "Erna" }, "form:has(input[value=erase])");
        Assert.Contains("That is not the name", slip.Text, StringComparison.Ordinal);
        await office.Submit(await office.Open(file), new() { ["name"] = name }, "form:has(input[value=erase])");

        Assert.Equal(before, (await hangar.Ledger(number)).Entries.Select(EntryCodec.Write));
        Assert.True((await hangar.Site.Services.GetRequiredService<LedgerAudit>().Verify(Ct)).Holds);
        foreach (var address in (string[])["/people", file, "/security"])
            Assert.DoesNotContain(name, (await office.Open(address)).Text, StringComparison.Ordinal);
        Assert.Equal(0, await db.Database.SqlQuery<int>($"""
            select count(*)::int as "Value" from (select p::text as t from person p union all select n::text from person_name_change n union all select c::text from certificate c union all select u::text from "user" u union all select payload from ledger_entry) everything
            where t like '%Erna%' or t like '%INV-ERNA-77%' or t like '%erna@%'
            """).SingleAsync(Ct));
        Assert.Equal(System.Net.HttpStatusCode.Redirect, (await erna.Open("/account")).Status);
        Assert.Null((await office.Open(file)).Document.QuerySelector("input[value=reopen]"));
    }
}
