using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.SideSteps;

/// <summary>After the squawk is over, at the next inspection.</summary>
[Collection(InTheHangar.Name)]
public sealed class TorqueRecheckTests(Hangar hangar)
{
    [Fact]
    public async Task A_torque_of_a_closed_squawk_is_due_at_the_next_inspection_until_somebody_found_it_in_order()
    {
        var squawk = await hangar.Squawk(School.Closed);
        using var mechanic = await hangar.As(School.Mechanic);
        var aircraft = (await mechanic.Open($"/squawks/{squawk}/other/torque-recheck")).Document.QuerySelector("a[href^='report/']")!.GetAttribute("href")!["report/".Length..];
        Assert.Contains("left rear spar attach bolt 3/8-24, torqued 2026-03-02", (await mechanic.Open($"/aircraft/{aircraft}")).Text, StringComparison.Ordinal);

        var answer = await mechanic.Submit(await mechanic.Open($"/squawks/{squawk}/other/torque-recheck"), new() { ["stripeInLine"] = "true", ["torqueHeld"] = "true", ["findings"] = "Stripe in line, 190 in·lb held." });

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        Assert.Equal(School.JustTorqued.Length, Assert.IsType<TorqueRechecked>((await hangar.Ledger(squawk)).Entries[^1].Fact).TorqueEntry);
        Assert.DoesNotContain("At the next inspection", (await mechanic.Open($"/aircraft/{aircraft}")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_did_not_hold_is_sent_to_another_squawk_and_not_recorded_here()
    {
        var squawk = await hangar.Squawk(School.Closed);
        using var mechanic = await hangar.As(School.Mechanic);

        var answer = await mechanic.Submit(await mechanic.Open($"/squawks/{squawk}/other/torque-recheck"), new() { ["torqueHeld"] = "true", ["findings"] = "Stripe broken." });

        Assert.Contains("do not let it fly, and report it as a new squawk", answer.Document.QuerySelector("#stripeinline-error")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Stripe broken.", answer.Document.QuerySelector("textarea[name=findings]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(School.Closed.Length, (await hangar.Ledger(squawk)).Length);
    }
}
