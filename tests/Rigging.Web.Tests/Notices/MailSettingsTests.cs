using MailKit.Security;
using Microsoft.Extensions.Configuration;
using Rigging.Storage;
using Rigging.Web.Notices;

namespace Rigging.Web.Tests.Notices;

public class MailSettingsTests
{
    static MailSettings? Read(params (string Key, string Value)[] settings) => MailSettings.Read(
        new ConfigurationBuilder().AddInMemoryCollection(settings.Select(setting => KeyValuePair.Create("Mail:" + setting.Key, (string?)setting.Value))).Build());

    [Fact]
    public void Without_a_host_no_mail_is_sent() => Assert.Null(Read());

    [Fact]
    public void A_host_and_a_sender_suffice()
    {
        var settings = Read(("Host", "smtp.example.org"), ("From", "Rigging <rigging@example.org>"))!;

        Assert.Equal(("smtp.example.org", 587, SecureSocketOptions.StartTlsWhenAvailable, "rigging@example.org"), (settings.Host, settings.Port, settings.Security, settings.From.Address));
    }

    [Theory]
    [InlineData("From", "nobody", "Mail:From is 'nobody'; wanted: the address that mails come from, such as rigging@example.org.")]
    [InlineData("Port", "70000", "Mail:Port is '70000'; wanted: a whole number from 1 to 65535.")]
    [InlineData("Security", "ssl", "Mail:Security is 'ssl'; wanted: starttls, tls or none; left out, starttls where the server offers it.")]
    [InlineData("User", "somebody", "Mail:User and Mail:Password go together and one is missing; wanted: both, or neither.")]
    [InlineData("Host", "", "Mail:From is set and Mail:Host is not; wanted: Mail:Host too, or none of them.")]
    public void A_setting_that_cannot_be_stops_the_start_and_is_named(string key, string value, string sentence)
    {
        var settings = new Dictionary<string, string> { ["Host"] = "smtp.example.org", ["From"] = "rigging@example.org", [key] = value };

        Assert.Equal(sentence, Assert.Throws<StartRefusedException>(() => Read([.. settings.Select(pair => (pair.Key, pair.Value))])).Message);
    }
}
