using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Fleet;

namespace Rigging.Web.Tests.Fleet;

[Collection(InTheHangar.Name)]
public class RampTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    Sessions Sessions => hangar.Site.Services.GetRequiredService<Sessions>();

    Ramp RampOf(Person who) => new(hangar.Site.Services.GetRequiredService<IDbContextFactory<RiggingDb>>(),
        hangar.Site.Services.GetRequiredService<LedgerStore>(), new Actor(new Signed(who, Sessions), Sessions), hangar.Site.Clock);

    static async Task<Strip> StripOf(Ramp ramp, int squawk) => (await ramp.Show(Ct)).Strips.Single(strip => strip.Open.Any(open => open.Number == squawk));

    [Fact]
    public async Task A_strip_shows_the_worst_of_all_its_squawks_first()
    {
        var mild = await hangar.Squawk(School.Called);
        var aircraft = (await hangar.Ledger(mild)).State.Report!.Aircraft;
        await hangar.Site.Services.GetRequiredService<LedgerStore>().File(School.Pilot.Id, School.Report with { Aircraft = aircraft, RedFlags = [RedFlag.Bang] }, Ct);

        var strip = await StripOf(RampOf(School.Pilot), mild);

        Assert.Equal(FlightStatus.Grounded, strip.May);
        Assert.Equal([FlightStatus.Grounded, FlightStatus.MayFly], strip.Open.Select(open => open.Allows));
    }

    [Fact]
    public async Task The_limits_of_a_call_are_shown_to_whoever_might_fly()
    {
        var number = await hangar.Squawk(School.Reported.Do(School.Mechanic, new Called(Call.MayFlyWithLimits, "Mild.", "Dual only.")));

        Assert.Equal("Dual only.", (await StripOf(RampOf(School.Pilot), number)).Pressing!.Limits);
    }

    [Fact]
    public async Task It_is_nobodys_turn_to_inspect_their_own_work()
    {
        var number = await hangar.Squawk(School.Worked);

        Assert.False((await StripOf(RampOf(School.Mechanic), number)).Pressing!.Mine);
        Assert.True((await StripOf(RampOf(School.Inspector), number)).Pressing!.Mine);
    }

    [Fact]
    public async Task Notices_are_each_persons_own_and_go_when_read()
    {
        var number = await hangar.Squawk(School.Reported);
        var (mechanic, office) = (RampOf(School.Mechanic), RampOf(School.Office));
        Assert.Contains((await mechanic.Show(Ct)).Notices, notice => notice.Squawk == number);

        await mechanic.MarkRead([number], Ct);

        Assert.DoesNotContain((await mechanic.Show(Ct)).Notices, notice => notice.Squawk == number);
        Assert.Contains((await office.Show(Ct)).Notices, notice => notice.Squawk == number);
    }

    [Fact]
    public async Task An_aircrafts_page_lists_what_is_closed_too()
    {
        var number = await hangar.Squawk(School.Closed);
        var registration = (await RampOf(School.Pilot).Show(Ct)).Strips.Select(strip => strip.Registration);
        using var browser = await hangar.As(School.Pilot);

        var pages = new List<string>();
        foreach (var each in registration) pages.Add((await browser.Open($"/aircraft/{each}")).Text);

        Assert.Single(pages, page => page.Contains($"S-{number} closed", StringComparison.Ordinal));
        Assert.Contains("There is no Q-NONE", (await browser.Open("/aircraft/Q-NONE")).Text, StringComparison.Ordinal);
    }

    sealed class Signed(Person who, Sessions sessions) : AuthenticationStateProvider
    {
        public override async Task<AuthenticationState> GetAuthenticationStateAsync() => new(new ClaimsPrincipal(new ClaimsIdentity(
        [
            new Claim(Actor.PersonClaim, who.Id.ToString()),
            new Claim(Sessions.Claim, (await sessions.Begin(who.Id, "test", null, null, Ct)).ToString()),
        ], "test")));
    }
}
