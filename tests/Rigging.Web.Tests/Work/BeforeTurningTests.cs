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

    static readonly PlannedMove TurnFork = new(Control.LeftStrutFork, null, null, "Left rear strut fork one and a half turns out.", 9, 10.5);

    static SquawkState Plan(params PlannedMove[] moves) => SquawkState.Nothing with { Correction = Eccentric.Correction! with { Moves = moves } };

    static PlannedMove Move(Control control) => new(control, null, null, "As the manual says.");

    static TypedFields Ticked(int steps)
    {
        var fields = new TypedFields();
        foreach (var (field, _) in WorkForm.BeforeTurning(Eccentric).Take(steps)) fields[field] = "true";
        return fields;
    }

    [Fact]
    public void Nothing_is_turned_before_every_step_is_ticked()
    {
        Assert.All((SquawkState[])[Eccentric, Plan(TurnFork)], plan =>
        {
            for (var steps = 0; steps < 4; steps++) Assert.False(WorkForm.ReadyToTurn(plan, Ticked(steps)));
            Assert.True(WorkForm.ReadyToTurn(plan, Ticked(4)));
        });
    }

    [Fact]
    public void A_step_is_reached_when_those_before_it_are_ticked() =>
        Assert.Equal([true, true, false, false], WorkForm.BeforeTurning(Eccentric).Select(step => WorkForm.Reached(Eccentric, Ticked(1), step.Field)));

    [Fact]
    public void What_moves_no_bolt_asks_for_none_of_it() =>
        Assert.True(WorkForm.ReadyToTurn(Plan(Move(Control.RudderTab)), new()));

    static string Steps(SquawkState plan) => string.Join('|', WorkForm.BeforeTurning(plan).Select(step => step.Words));

    /// <summary>An eccentric turns about its bolt; a fork is screwed with its bolt out of it.</summary>
    [Fact]
    public void A_forks_steps_speak_of_its_bolt_taken_out_and_of_no_bushing()
    {
        Assert.Contains("bolt is out", Steps(Plan(TurnFork)), StringComparison.Ordinal);
        Assert.DoesNotContain("ushing", Steps(Plan(TurnFork)), StringComparison.Ordinal);
        Assert.DoesNotContain("not withdrawn", Steps(Plan(TurnFork)), StringComparison.Ordinal);
        Assert.Contains("not withdrawn", Steps(Eccentric), StringComparison.Ordinal);
        Assert.DoesNotContain("fork", Steps(Eccentric), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_with_both_has_the_words_of_both_at_the_same_ticks()
    {
        var both = Plan([.. Eccentric.Correction!.Moves, TurnFork]);

        Assert.Equal(WorkForm.BeforeTurning(Eccentric).Select(step => step.Field), WorkForm.BeforeTurning(both).Select(step => step.Field));
        Assert.Contains("not withdrawn; its nut is still on. The rear strut fork’s bolt is out", Steps(both), StringComparison.Ordinal);
        Assert.Equal(2, WorkForm.BeforeTheMove(both).Count());
        Assert.Equal(2, WorkForm.BeforeTheStart(both).Count());
    }

    public static TheoryData<Control, string, string?> Cautions => new()
    {
        { Control.LeftEccentric, "one bushing alone", "spar bolt" },
        { Control.RightStrutFork, "fork is turned with its bolt out", "fork’s bolt" },
        { Control.LeftFlapRod, "flap whose rod is off", null },
        { Control.AileronTab, "surface that is not held", null },
        { Control.RudderTab, "surface that is not held", null },
    };

    [Theory, MemberData(nameof(Cautions))]
    public void What_is_said_before_the_move_and_before_the_start_is_about_what_is_moved(Control control, string move, string? start)
    {
        static string Said(IEnumerable<(string Happens, string Do)> cautions) => string.Join('|', cautions.Select(caution => $"{caution.Happens} {caution.Do}"));

        Assert.Contains(move, Said(WorkForm.BeforeTheMove(Plan(Move(control)))), StringComparison.Ordinal);
        if (start is null) Assert.Empty(WorkForm.BeforeTheStart(Plan(Move(control))));
        else Assert.Contains(start, Said(WorkForm.BeforeTheStart(Plan(Move(control)))), StringComparison.Ordinal);
    }

    [Theory, InlineData(Control.LeftEccentric, "Support the wing and start"), InlineData(Control.LeftStrutFork, "Support the wing and start"), InlineData(Control.RudderTab, "Start the work")]
    public void The_first_step_supports_a_wing_where_one_is_moved(Control control, string title) =>
        Assert.Equal(title, WorkForm.TitleOf(Part.Start, Plan(Move(control))));

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
        foreach (var surface in Enum.GetValues<ControlSurface>()) fields[WorkForm.SurfaceField(surface)] = "no";
        var typed = new Typed();

        WorkForm.Done(fields, typed, Eccentric, Rigging.Squawks.Tests.School.Facts(Rigging.Squawks.Tests.School.Mechanic));

        Assert.Equal(right, typed.Ok);
    }
}
