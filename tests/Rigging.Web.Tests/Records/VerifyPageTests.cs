using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;
using Rigging.Storage.Seals;
using Rigging.Storage.Tests;

namespace Rigging.Web.Tests.Records;

public sealed class VerifyPageTests(Postgres postgres) : IAsyncLifetime
{
    readonly Hangar hangar = new(postgres);

    public async ValueTask InitializeAsync()
    {
        await hangar.InitializeAsync();
        await hangar.Squawk(School.Called);
        await hangar.Site.Services.GetRequiredService<Sealer>().SealNow(CancellationToken.None);
    }

    public ValueTask DisposeAsync() => hangar.DisposeAsync();

    [Fact]
    public async Task Whole_records_are_said_to_be_whole_and_the_seal_can_be_taken_away()
    {
        using var office = await hangar.As(School.Office);

        var page = await office.Open("/school/verify");
        var answer = await office.Http.GetAsync(new Uri("/school/seals/1.txt", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Contains("1 ledgers with 2 entries, 0 broken; 1 seals, 0 broken.", page.Document.QuerySelector("#verdict")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition!.DispositionType);
        var seal = Seal.Read(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Seal!;
        Assert.Equal((1, 2), (seal.Number, seal.Entries));
        Assert.Contains(Convert.ToHexStringLower(seal.Hash), page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_entry_is_named_on_the_page()
    {
        await Postgres.Execute(hangar.Site.Owner, "alter table ledger_entry disable trigger all; update ledger_entry set payload = replace(payload, 'straight', 'crooked') where sequence = 2");
        using var inspector = await hangar.As(School.Inspector);

        var page = await inspector.Open("/school/verify");

        Assert.Contains("S-1, entry 2: does not follow from the entries before it", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("every seal agrees", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pilot_is_told_whom_the_records_are_for_and_gets_no_seal()
    {
        using var pilot = await hangar.As(School.Pilot);

        Assert.Contains("The records are for", (await pilot.Open("/school/verify")).Text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await pilot.Open("/school/seals/1.txt")).Status);
    }
}
