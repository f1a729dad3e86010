using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Notices;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Storage.Tests.Notices;

public sealed class NoticeWriterTests(Postgres postgres) : IAsyncLifetime
{
    readonly SchoolHouse school = new(postgres);

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => school.InitializeAsync();

    public ValueTask DisposeAsync() => school.DisposeAsync();

    [Fact]
    public async Task A_filed_squawk_is_told_to_office_and_hangar()
    {
        var ledger = await school.Walk();

        Assert.Equal([(NoticeKind.Filed, school.Office), (NoticeKind.Filed, school.Mechanic), (NoticeKind.Filed, school.Inspector)], await About(ledger, 1));
    }

    [Fact]
    public async Task A_red_flag_grounds_and_is_told_as_that()
    {
        var outcome = await school.Ledgers.File(school.Pilot, school.Report("Bang, then it rolled.", RedFlag.Bang), Ct);

        var ledger = Assert.IsType<Outcome.Appended>(outcome).Ledger;
        Assert.Equal([(NoticeKind.Grounded, school.Office), (NoticeKind.Grounded, school.Mechanic), (NoticeKind.Grounded, school.Inspector)], await About(ledger, 1));
    }

    [Fact]
    public async Task Grounding_by_the_call_is_told_to_the_reporter_too_and_not_to_whoever_made_it()
    {
        var ledger = await school.Walk((school.Mechanic, new Called(Call.Grounded, "Both hands needed.", null)));

        Assert.Equal([(NoticeKind.Grounded, school.Pilot), (NoticeKind.Grounded, school.Office), (NoticeKind.Grounded, school.Inspector)], await About(ledger, 2));
    }

    [Fact]
    public async Task The_reporter_hears_when_it_flies_again()
    {
        var ledger = await school.Walk((school.Inspector, SchoolHouse.Call));

        Assert.Equal([(NoticeKind.BackInService, school.Pilot), (NoticeKind.YourTurn, school.Mechanic)], await About(ledger, 2));
    }

    [Fact]
    public async Task It_does_not_fly_again_while_another_squawk_holds_it()
    {
        await school.Walk((school.Mechanic, new Called(Call.Grounded, "Both hands needed.", null)));
        var ledger = await school.Walk((school.Inspector, SchoolHouse.Call));

        Assert.Equal([(NoticeKind.YourTurn, school.Mechanic)], await About(ledger, 2));
    }

    [Fact]
    public async Task Limits_are_in_the_notice()
    {
        var ledger = await school.Walk((school.Inspector, new Called(Call.MayFlyWithLimits, "Mild.", "No solo students.")));

        await using var db = school.CreateDbContext();
        var notice = await db.Notices.SingleAsync(row => row.SquawkId == ledger.Id && row.PersonId == school.Pilot, Ct);
        Assert.Equal("S-1 Q-TEST: back in service, with limits", notice.Subject);
        Assert.Contains("Limits: No solo students.", notice.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_remark_is_nobodys_business()
    {
        var ledger = await school.Walk((school.Inspector, SchoolHouse.Call), (school.Pilot, new Noted("It did it again.", null)));

        Assert.Empty(await About(ledger, 3));
    }

    async Task<List<(NoticeKind, PersonId)>> About(Ledger ledger, int sequence)
    {
        await using var db = school.CreateDbContext();
        var rows = await db.Notices.Where(notice => notice.SquawkId == ledger.Id && notice.Sequence == sequence)
            .Join(db.People, notice => notice.PersonId, person => person.Id, (notice, person) => new { notice.Kind, notice.PersonId, person.Number })
            .OrderBy(row => row.Number).ToListAsync(Ct);
        return [.. rows.Select(row => (row.Kind, row.PersonId))];
    }
}
