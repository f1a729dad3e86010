using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

/// <summary>What closed ledgers teach, read back from the database they were stored in.</summary>
[Collection(InTheHangar.Name)]
public sealed class LessonsOnRecordTests(Hangar hangar)
{
    const string Timed = """
        [{ "manoeuvre": "release-wheel", "casKt": 95, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 25 } },
           "readings": [{ "kind": "bank-after", "seconds": 10, "deg": -1.5, "method": "stopwatch-horizon" }] }]
        """;

    static Ledger Turned => School.Approved.Do(School.Pilot, School.Flight with { TestPoints = Timed })
        .Do(School.Mechanic, School.Verdict(VerdictWord.Accepted)).Do(School.Inspector, new Closed("Cured."));

    [Fact]
    public async Task A_closed_squawk_of_another_aircraft_of_the_type_teaches_what_its_ledger_holds()
    {
        var taught = await hangar.Ledger(await hangar.Squawk(Turned));
        var current = await hangar.Ledger(await hangar.Squawk(School.Checked));

        var lessons = await Lessons(current);

        var expected = Assert.Single(Squawks.Evidence.Lessons.Of(taught, School.Airframe, sameAircraft: false));
        Assert.Contains(expected, lessons);
        Assert.Contains(LedgerAssessment.Of(current, School.Airframe, lessons).Response.Cautions, caution => caution.Contains("earlier correction", StringComparison.Ordinal));
    }

    /// <summary>What is still open, or closed on the squawk itself, teaches that squawk nothing.</summary>
    [Fact]
    public async Task An_open_squawk_teaches_nothing_yet()
    {
        var open = await hangar.Ledger(await hangar.Squawk(School.Approved.Do(School.Pilot, School.Flight with { TestPoints = Timed.Replace("-1.5", "-2.25", StringComparison.Ordinal) })));

        Assert.DoesNotContain(Assert.Single(Squawks.Evidence.Lessons.Of(open, School.Airframe, sameAircraft: false)), await Lessons(await hangar.Ledger(await hangar.Squawk(School.Checked))));
    }

    async Task<IReadOnlyList<Mechanics.Contract.EarlierCorrection>> Lessons(Ledger current)
    {
        await using var scope = hangar.Site.Services.CreateAsyncScope();
        await using var db = hangar.Site.OpenDatabase();
        var file = await SquawkDesk.FileOf(db, current, School.Facts(School.Mechanic), TestContext.Current.CancellationToken);
        return await scope.ServiceProvider.GetRequiredService<SquawkDesk>().Lessons(file, TestContext.Current.CancellationToken);
    }
}
