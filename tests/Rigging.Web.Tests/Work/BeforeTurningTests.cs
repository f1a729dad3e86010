using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Work;

namespace Rigging.Web.Tests.Work;

public sealed class BeforeTurningTests
{
    static readonly SquawkState Eccentric = SquawkState.Nothing with
    {
        Correction = new([new(Control.LeftEccentric, 0, 30, "Left wing: half a flat down.")], new("manual", "57-10", "C"), false, "because", null, null, null),
    };

    static TypedFields Ticked(int steps)
    {
        var fields = new TypedFields();
        foreach (var (field, _) in WorkForm.BeforeTurning.Take(steps)) fields[field] = "true";
        return fields;
    }

    [Fact]
    public void Nothing_is_turned_before_every_step_is_ticked()
    {
        for (var steps = 0; steps < WorkForm.BeforeTurning.Count; steps++) Assert.False(WorkForm.ReadyToTurn(Eccentric, Ticked(steps)));
        Assert.True(WorkForm.ReadyToTurn(Eccentric, Ticked(WorkForm.BeforeTurning.Count)));
    }

    [Fact]
    public void A_step_is_reached_when_those_before_it_are_ticked() =>
        Assert.Equal([true, true, false, false], WorkForm.BeforeTurning.Select(step => WorkForm.Reached(Ticked(1), step.Field)));

    [Fact]
    public void What_moves_no_bolt_asks_for_none_of_it() =>
        Assert.True(WorkForm.ReadyToTurn(SquawkState.Nothing with { Correction = Eccentric.Correction! with { Moves = [new(Control.RudderTab, null, null, "Bend it.")] } }, new()));

    [Fact]
    public void A_bolt_ticked_as_loosened_counts_as_loose_until_it_is_torqued()
    {
        Assert.False(WorkForm.BoltIsLoose(Eccentric, Ticked(1)));
        Assert.True(WorkForm.BoltIsLoose(Eccentric, Ticked(2)));
    }

    [Theory, InlineData("14", "13", false), InlineData("14", "14", true), InlineData("", "14", false)]
    public void Tools_that_do_not_come_back_keep_the_work_from_being_signed(string taken, string back, bool right)
    {
        var fields = new TypedFields { ["done.toolsOut"] = taken, ["done.toolsBack"] = back, ["done.manHours"] = "1", ["done.totalTimeH"] = "100", ["done.completedOn"] = "2026-03-02" };
        var typed = new Typed();

        WorkForm.Done(fields, typed, Eccentric);

        Assert.Equal(right, typed.Ok);
    }
}
