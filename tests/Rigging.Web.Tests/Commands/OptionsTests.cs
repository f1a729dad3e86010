using System.Net;
using Rigging.Storage;
using Rigging.Web.Commands;

namespace Rigging.Web.Tests.Commands;

public sealed class OptionsTests
{
    [Fact]
    public void Without_a_word_it_serves_on_loopback()
    {
        var options = Options.Read([]);

        Assert.Equal(("serve", 5080, ".local", true), (options.Command, options.Port, options.Data, options.Demo));
        Assert.True(options.LoopbackOnly);
    }

    [Fact]
    public void Every_option_is_read_with_a_space_or_an_equals_sign()
    {
        string[] spaced = ["migrate", "--port", "81", "--data", "d", "--no-demo", "--connection", "Host=h;Username=u;Database=d", "--listen", "192.168.1.20", "--public-url", "https://rigging.example"];
        string[] joined = ["migrate", "--port=81", "--data=d", "--no-demo", "--connection=Host=h;Username=u;Database=d", "--listen=192.168.1.20", "--public-url=https://rigging.example"];

        foreach (var options in new[] { Options.Read(spaced), Options.Read(joined) })
        {
            Assert.Equal(("migrate", 81, "d", false), (options.Command, options.Port, options.Data, options.Demo));
            Assert.Equal("Host=h;Username=u;Database=d", options.Connection);
            Assert.Equal(IPAddress.Parse("192.168.1.20"), options.Listen);
            Assert.Equal("https://rigging.example/", options.PublicUrl!.ToString());
        }
    }

    [Fact]
    public void Settings_of_the_host_are_handed_on() =>
        Assert.Equal(["--environment=Testing", "--Mail:Host=smtp.example", "--Mail:Port=25"],
            Options.Read(["--environment=Testing", "--Mail:Host", "smtp.example", "--Mail:Port=25"]).ForTheHost);

    [Theory]
    [InlineData("srve is not a command", "srve")]
    [InlineData("--prot is not an option", "--prot", "80")]
    [InlineData("port is not an option", "serve", "port")]
    [InlineData("--port abc is not a port; wanted: a whole number from 1 to 65535", "--port", "abc")]
    [InlineData("--port -1 is not a port", "--port", "-1")]
    [InlineData("--port 65536 is not a port", "--port", "65536")]
    [InlineData("--port 80.5 is not a port", "--port=80.5")]
    [InlineData("--port has no value", "--port")]
    [InlineData("--port has no value", "--port=")]
    [InlineData("--data has no value", "--data", "--no-demo")]
    [InlineData("--port is given twice", "--port", "1", "--port", "2")]
    [InlineData("--no-demo=false takes no value", "--no-demo=false")]
    [InlineData("--listen nowhere is not an IP address", "--listen", "nowhere")]
    [InlineData("--listen 0.0.0.0 opens the site to other machines; wanted: also --public-url", "--listen", "0.0.0.0")]
    [InlineData("--public-url rigging.example is not an address to publish", "--public-url", "rigging.example")]
    [InlineData("--public-url http://rigging.example is not an address to publish", "--public-url", "http://rigging.example")]
    [InlineData("--public-url https://rigging.example/path is not an address to publish", "--public-url", "https://rigging.example/path")]
    [InlineData("--proxy somewhere is no address or network", "--proxy", "somewhere", "--public-url", "https://rigging.example")]
    [InlineData("--proxy 0.0.0.0/0 is no address or network", "--proxy", "0.0.0.0/0", "--public-url", "https://rigging.example")]
    [InlineData("--proxy is said of a site that has no public address", "--proxy", "10.0.0.5")]
    [InlineData("--connection is not a PostgreSQL connection string", "--connection", "sesame")]
    [InlineData("--connection is not a PostgreSQL connection string", "--connection", "Host=h;Password=secret")]
    public void A_wrong_word_is_named_with_what_was_wanted(string said, params string[] line)
    {
        var refused = Assert.Throws<StartRefusedException>(() => Options.Read(line));

        Assert.StartsWith(said, refused.Message, StringComparison.Ordinal);
        Assert.Contains("wanted: ", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, "--listen", "127.0.0.1")]
    [InlineData(true, "--listen", "::1")]
    [InlineData(true, "--public-url", "http://localhost:8080")]
    [InlineData(false, "--public-url", "https://rigging.example")]
    [InlineData(false, "--listen", "0.0.0.0", "--public-url", "http://localhost:5080")]
    [InlineData(false, "--listen", "192.168.1.20", "--public-url", "https://rigging.example")]
    public void Published_passwords_count_only_where_no_other_machine_can_reach(bool loopbackOnly, params string[] line) =>
        Assert.Equal(loopbackOnly, Options.Read(line).LoopbackOnly);

    [Fact]
    public void Help_wins_wherever_it_stands() => Assert.Equal("help", Options.Read(["serve", "--port", "81", "--help"]).Command);
}
