using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.SideSteps;

/// <summary>What was agreed will not be done.</summary>
[Collection(InTheHangar.Name)]
public sealed class WithdrawPageTests(Hangar hangar)
{
    [Fact]
    public async Task A_mechanic_withdraws_a_plan_with_a_reason_before_work_starts()
    {
        var squawk = await hangar.Squawk(School.Agreed);
        using var mechanic = await hangar.As(School.Mechanic);
        var page = await mechanic.Open($"/squawks/{squawk}/other/withdraw-correction");
        Assert.Contains(School.HalfAFlat.Moves[0].Instruction, page.Text, StringComparison.Ordinal);

        Assert.NotNull((await mechanic.Submit(page, [])).Document.QuerySelector("#reason-error"));
        var answer = await mechanic.Submit(page, new() { ["reason"] = "The fork is seized." });

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        var ledger = await hangar.Ledger(squawk);
        Assert.Equal((new CorrectionWithdrawn("The fork is seized."), Stage.InChecks), (ledger.Entries[^1].Fact, ledger.State.Stage!.Value));
    }
}
