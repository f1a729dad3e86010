using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Verification;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage.Ledgers;
using Rigging.Web.Demo;
using Rigging.Web.Desk;
using Rigging.Web.Fleet;
using Rigging.Web.Plots;
using Rigging.Web.Story;

namespace Rigging.Web.Tests.Demo;

public sealed class DemoSchoolTests(LoadedSchool loaded) : IClassFixture<LoadedSchool>
{
    static readonly SeedFolder Seeds = SeedFolder.Read(SeedFolder.Shipped);

    readonly DemoDatabase school = loaded.Database;

    async Task<Ledger> Ledger(int story) => (await school.Ledgers.Load(new(Seeds.Stories[story - 1].Story.Id), CancellationToken.None))!;

    [Fact]
    public async Task Every_story_is_told_to_its_end_through_the_rules()
    {
        await using var db = school.CreateDbContext();
        var squawks = await db.Squawks.OrderBy(squawk => squawk.Number).ToListAsync(TestContext.Current.CancellationToken);
        Assert.Equal(Seeds.Stories.Select(seed => (seed.Story.Id, seed.Story.EndsAt, seed.Story.Acts.Count)), squawks.Select(squawk => (squawk.Id.Value, squawk.Stage, squawk.Length)));
        Assert.Equal(
            [Stage.Closed, Stage.WithinLimitsMonitored, Stage.ApprovedPassengersBarred, Stage.AwaitingInspection, Stage.InWork, Stage.InChecks, Stage.Reported, Stage.InChecks],
            squawks.Select(squawk => squawk.Stage));
        Assert.Empty((await new LedgerAudit(school).Verify(CancellationToken.None)).Faults);
    }

    [Fact]
    public async Task Whoever_reported_what_is_closed_is_asked_how_it_flies()
    {
        await using var db = school.CreateDbContext();
        var asked = await db.Notices.SingleAsync(notice => notice.Kind == Rigging.Storage.Notices.NoticeKind.AskedAgain, TestContext.Current.CancellationToken);

        Assert.Equal((Seeds.Stories[0].Story.Id, Seeds.Person("wren")!.Id), (asked.SquawkId.Value, asked.PersonId.Value));
        Assert.Contains("flown it three times", asked.Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_signatures_say_that_nobody_was_asked_for_a_password()
    {
        var signatures = (await Ledger(1)).Entries.Select(entry => entry.Signature).OfType<Signature>().ToList();

        Assert.Equal(6, signatures.Count);
        Assert.All(signatures, signature => Assert.Equal("demo seed: no password was asked", signature.Method));
        Assert.All(signatures, signature => Assert.Equal("in an invented story, for which no password was asked", SquawkFile.How(signature)));
        Assert.Equal("by password", SquawkFile.How(signatures[0] with { Method = "password" }));
    }

    [Fact]
    public async Task The_closed_ones_verdict_comes_out_again_from_its_own_readings()
    {
        var verdict = (await Ledger(1)).State.Verdict!;

        var request = ContractReader.ReadRequest(verdict.Request).Value!;
        var again = Mechanics.Verification.CheckFlight.Judge(request, request.Airframe!, fuelMeasured: true);

        Assert.Equal(Verdict.Accepted, again.Verdict);
        Assert.Equal(VerdictWord.Accepted, verdict.Verdict);
        // It flew to the right, and the fuller right tank is more than all of it.
        Assert.All(request.TestPoints.SelectMany(point => point.Readings).OfType<BankAfter>(), bank => Assert.True(bank.Deg > 0));
        Assert.True(verdict.LoadShareDegPerS > 0.4);
        Assert.Equal(again.RollTendency!.Mean, verdict.TendencyDegPerS!.Value, 9);
        // Without the dip stick the same flight would prove nothing.
        Assert.Equal(Verdict.NotEnoughEvidence, Mechanics.Verification.CheckFlight.Judge(request, request.Airframe!, fuelMeasured: false).Verdict);
    }

    /// <summary>What was read after the work stands beside what is expected after it, and what was read before beside what was expected before.</summary>
    [Fact]
    public async Task The_plots_of_the_closed_one_keep_what_was_flown_before_the_work_apart_from_what_was_flown_after_it()
    {
        var ledger = await Ledger(1);
        var facts = (await school.Ledgers.Look(ledger.Id, new(Seeds.Person("jude")!.Id), CancellationToken.None))!.Value.Facts;

        var chart = FlownPlots.Of(ledger, facts.Airframe!)[0];

        Assert.Equal([Telling.Earlier, Telling.Now], chart.Dots.Select(dots => dots.Telling));
        // Before, it rolled left; after, with 8 L more on the right, right. Both are drawn as with that fuel, each reading at its own line.
        Assert.Collection(chart.Curves, before => Assert.True(before.Points[^1].Mean < 0, chart.Says), after => Assert.True(after.Points[^1].Mean > 0, chart.Says));
        Assert.All(chart.Curves.Zip(chart.Dots), pair => Assert.All(pair.Second.Points, point =>
        {
            var line = pair.First.Points.MinBy(at => Math.Abs(at.X - point.X));
            Assert.InRange(point.Y, line.Low - (point.Y - point.Within!.Value.Low) / 2, line.High + (point.Within.Value.High - point.Y) / 2);
        }));
    }

    /// <summary>An interval need not be as wide to both sides.</summary>
    [Fact]
    public async Task The_history_of_an_aircraft_draws_each_interval_as_it_is_on_record()
    {
        List<Ledger> ledgers = [];
        for (var story = 1; story <= Seeds.Stories.Count; story++) ledgers.Add(await Ledger(story));

        var drawn = TendencyHistory.Of(ledgers, DateTimeZone.Utc, 0.5)!.Value.Chart.Dots.SelectMany(dots => dots.Points).Select(dot => (dot.Within!.Value.Low, dot.Y, dot.Within.Value.High));

        var assessed = ledgers.SelectMany(ledger => ledger.Entries).Select(entry => entry.Fact).OfType<Assessed>().Select(fact => JsonNode.Parse(fact.Response)!["rollTendency"]!).Select(on => (Low: (double)on["low"]!, Mean: (double)on["mean"]!, High: (double)on["high"]!)).ToList();
        Assert.Contains(assessed, on => Math.Abs(on.High + on.Low - 2 * on.Mean) > 0.01);
        Assert.Subset(drawn.ToHashSet(), assessed.ToHashSet());
    }

    /// <summary>The verdict's number is what is left once the day's load is taken out: it is not taken out again in the telling.</summary>
    [Fact]
    public async Task The_story_tells_the_verdicts_own_number()
    {
        var verdict = (await Ledger(1)).State.Verdict!;

        var told = EntryStory.Of(verdict, text => text).Lines.Select(line => line.Text).ToList();

        var found = JsonNode.Parse(verdict.Response)!["rollTendency"]!;
        Assert.Equal($"With the load it is rigged for: {Directions.Expected(verdict.TendencyDegPerS!.Value, (double)found["low"]!, (double)found["high"]!)}.", told[0]);
        Assert.DoesNotContain(told, line => line.Contains(Directions.RollRate(verdict.TendencyDegPerS!.Value - verdict.LoadShareDegPerS!.Value), StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_second_start_leaves_it_as_it_is()
    {
        var before = await school.Entries();

        Assert.False(await school.Load());

        Assert.Equal(before, await school.Entries());
    }

    [Fact]
    public async Task One_wrench_is_in_calibration_and_one_a_day_out()
    {
        var facts = (await school.Ledgers.Look(new(Seeds.Stories[3].Story.Id), new(Seeds.Person("jude")!.Id), CancellationToken.None))!.Value.Facts;

        var wrenches = facts.Tools.Values.Where(tool => tool.Kind == ToolKind.TorqueWrench).OrderBy(tool => tool.Code).ToList();

        Assert.Equal([true, false], wrenches.Select(wrench => wrench.InCalibrationOn(facts.Today)));
        Assert.Equal(facts.Today.PlusDays(-1), wrenches[1].CalibrationDue);
    }
}
