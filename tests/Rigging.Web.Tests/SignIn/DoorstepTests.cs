using System.Net;
using NodaTime;
using NodaTime.Testing;
using Rigging.Web.SignIn;

namespace Rigging.Web.Tests.SignIn;

public class DoorstepTests
{
    static readonly IPAddress Elsewhere = IPAddress.Parse("192.0.2.7");

    readonly FakeClock clock = new(TestSite.Noon);

    Doorstep After(int wrong, IPAddress from)
    {
        var doorstep = new Doorstep(clock);
        for (var i = 0; i < wrong; i++) doorstep.Wrong(from);
        return doorstep;
    }

    [Theory]
    [InlineData(9, 0)]
    [InlineData(10, 1)]
    [InlineData(11, 2)]
    [InlineData(13, 8)]
    [InlineData(40, 60)]
    public void Each_wrong_try_beyond_the_free_ones_doubles_the_wait(int wrong, int seconds) =>
        Assert.Equal(Duration.FromSeconds(seconds), After(wrong, Elsewhere).Wait(Elsewhere));

    [Fact]
    public void This_machine_is_given_more_since_everybody_on_it_shares_its_address()
    {
        Assert.Equal(Duration.Zero, After(Doorstep.FreeTriesHere - 1, IPAddress.Loopback).Wait(IPAddress.IPv6Loopback));
        Assert.True(After(Doorstep.FreeTriesHere, IPAddress.Loopback).Wait(IPAddress.IPv6Loopback) > Duration.Zero);
    }

    [Fact]
    public void It_passes_with_time_and_one_address_does_not_pay_for_another()
    {
        var doorstep = After(12, Elsewhere);
        Assert.Equal(Duration.Zero, doorstep.Wait(IPAddress.Parse("192.0.2.8")));
        clock.AdvanceSeconds(4);
        Assert.Equal(Duration.Zero, doorstep.Wait(Elsewhere));
        doorstep.Wrong(Elsewhere);
        Assert.Equal(Duration.FromSeconds(8), doorstep.Wait(Elsewhere));
        clock.AdvanceMinutes(15);
        doorstep.Wrong(Elsewhere);
        Assert.Equal(Duration.Zero, doorstep.Wait(Elsewhere));
    }

    [Fact]
    public void Whoever_has_one_address_of_the_new_kind_has_the_whole_network_of_it() =>
        Assert.True(After(10, IPAddress.Parse("2001:db8::1")).Wait(IPAddress.Parse("2001:db8::ffff:2")) > Duration.Zero);
}
