using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.CheckFlight;

/// <summary>What the check pilot reads of the work.</summary>
[Collection(InTheHangar.Name)]
public sealed class BriefingTests(Hangar hangar)
{
    [Fact]
    public async Task A_rod_that_was_set_is_named_and_no_eccentric_that_nobody_touched()
    {
        var set = School.Checked.Do(School.Mechanic, School.HalfAFlat with { Moves = [new(Control.RightFlapRod, null, null, "Right flap rod one turn in.", 1, 0)] })
            .Do(School.Mechanic, new WorkStarted("Flap on a trestle.", null))
            .Do(School.Mechanic, School.Found with { Adjusters = [new(Control.RightFlapRod, 1)] })
            .MeasuredAgain()
            .Do(School.Mechanic, School.Done with { AsLeft = new(null, null, null, null), Disturbed = ["right flap push rod"], AdjustersAsLeft = [new(Control.RightFlapRod, 0)] });
        var approved = set.Do(School.Inspector, School.Inspection with { Observations = [.. set.State.ControlsToSee.Select(asked => asked with { Seen = asked.Expected })] }).Do(School.Certifier, School.Approval);
        using var browser = await hangar.As(School.Pilot);

        var page = await browser.Open($"/squawks/{await hangar.Squawk(approved)}/check-flight");

        Assert.Contains("Right flap rod: it stood 1 turn out from the length of the drawing, and now stands at the length of the drawing.", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("wing eccentric", page.Text, StringComparison.OrdinalIgnoreCase);
    }
}
