using System.Net;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Security;

/// <summary>Addresses that somebody guesses, or was once shown, asked for as others and signed out.</summary>
[Collection(InTheHangar.Name)]
public sealed class GuessedAddressTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_guessed_number_hash_or_id_gives_nothing_to_whom_it_does_not_belong()
    {
        byte[] picture = [1, 2, 3];
        var hash = Convert.ToHexStringLower(SHA256.HashData(picture));
        await using var db = hangar.Site.OpenDatabase();
        await db.Database.ExecuteSqlAsync($"insert into attachment (sha256, media_type, bytes) values ({SHA256.HashData(picture)}, 'image/png', {picture})", Ct);
        var its = await hangar.Squawk(School.Worked.Do(School.Mechanic, new Photographed(hash, PhotoOf.AfterWork, "Stripe.")));
        var other = await hangar.Squawk(School.Worked);
        var id = (await hangar.Ledger(its)).Id.Value.ToString();
        // The last digit, and so nobody's.
        var near = id[..^1] + (id[^1] == '0' ? '1' : '0');
        var aircraft = (await hangar.Ledger(its)).State.Report!.Aircraft;
        var registration = await db.Aircraft.Where(row => row.Id == aircraft).Select(row => row.Registration).SingleAsync(Ct);
        using var stranger = hangar.Site.Browser();
        using var guest = await GuestOf(other);
        using var pilot = await hangar.As(School.Pilot);
        using var office = await hangar.As(School.Office);

        (string Address, string Stranger, string Guest, string Pilot, string Office)[] table =
        [
            ($"/squawks/{its}/photos/{hash}", "sign-in", "no", "yes", "yes"),
            ($"/squawks/{other}/photos/{hash}", "sign-in", "no", "no", "no"),
            ($"/squawks/{its}/photos/{new string('0', 64)}", "sign-in", "no", "no", "no"),
            ($"/squawks/{its}/photos/%2e%2e%2f{hash}", "sign-in", "no", "no", "no"),
            ($"/squawks/{its}/record.pdf", "sign-in", "no", "yes", "yes"),
            ($"/squawks/{other}/record.pdf", "sign-in", "yes", "yes", "yes"),
            ("/squawks/999999/record.pdf", "sign-in", "no", "no", "no"),
            ($"/squawks/{its}/bundle.zip", "sign-in", "no", "refused", "yes"),
            ("/squawks/999999/bundle.zip", "sign-in", "no", "refused", "no"),
            ($"/aircraft/{registration}/bundle.zip", "sign-in", "no", "refused", "yes"),
            ("/school/bundle.zip", "sign-in", "no", "refused", "yes"),
            ($"/aircraft/{registration}/placard.pdf", "sign-in", "no", "yes", "yes"),
            // These two are open to whoever has the address; their neighbours are nobody's.
            ($"/receipt/{id}", "yes", "no", "yes", "yes"),
            ($"/receipt/{near}", "no", "no", "no", "no"),
            ("/receipt/1", "no", "no", "no", "no"),
            ($"/cockpit/{aircraft}", "yes", "no", "yes", "yes"),
            ($"/cockpit/{id}", "no", "no", "no", "no"),
            ("/cockpit/1", "no", "no", "no", "no"),
        ];
        List<string> wrong = [];
        foreach (var row in table)
            foreach (var (who, browser, wanted) in ((string, Browser, string)[])[("stranger", stranger, row.Stranger), ("guest", guest, row.Guest), ("pilot", pilot, row.Pilot), ("office", office, row.Office)])
                if (await Ask(browser, row.Address) is var said && said != wanted) wrong.Add($"{row.Address} as {who}: {said}, wanted {wanted}");
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    static async Task<string> Ask(Browser browser, string address)
    {
        using var answer = await browser.Http.GetAsync(new Uri(address, UriKind.Relative), HttpCompletionOption.ResponseHeadersRead, Ct);
        return answer.StatusCode switch
        {
            HttpStatusCode.OK => "yes",
            HttpStatusCode.NotFound => "no",
            HttpStatusCode.Forbidden => "refused",
            HttpStatusCode.Unauthorized => "sign-in",
            HttpStatusCode.Redirect when answer.Headers.Location!.ToString().Contains("/sign-in", StringComparison.Ordinal) => "sign-in",
            var other => other.ToString(),
        };
    }

    async Task<Browser> GuestOf(int squawk)
    {
        var email = $"guesser{squawk}@elsewhere.example";
        var guest = await hangar.Site.AddPerson("Gus Guesser", email, [Authority.Mechanic, Authority.Inspector]);
        await using var db = hangar.Site.OpenDatabase();
        await db.People.Where(row => row.Id == guest).ExecuteUpdateAsync(set => set
            .SetProperty(row => row.GuestOf, db.Squawks.Where(row => row.Number == squawk).Select(row => (SquawkId?)row.Id).Single())
            .SetProperty(row => row.GuestUntil, TestSite.Noon + Duration.FromDays(1)), Ct);
        return await hangar.Site.SignedIn(email);
    }

    [Theory]
    [InlineData("127.0.0.1", "--public-url https://rigging.example", "198.51.100.9")]                          // the proxy, on this machine
    [InlineData("10.0.0.5", "--public-url https://rigging.example", "10.0.0.5")]                               // anybody in our own network
    [InlineData("10.0.0.5", "--public-url https://rigging.example --proxy 10.0.0.5", "198.51.100.9")]          // the proxy that was named
    [InlineData("10.0.0.6", "--public-url https://rigging.example --proxy 10.0.0.5", "10.0.0.6")]              // its neighbour
    [InlineData("172.30.5.9", "--public-url https://rigging.example --proxy ::1,172.30.5.0/28", "198.51.100.9")]  // one of a network that was named
    [InlineData("203.0.113.7", "--public-url https://rigging.example --proxy 10.0.0.5", "203.0.113.7")]        // somebody who claims to be one
    [InlineData("127.0.0.1", "", "127.0.0.1")]                                                                 // no proxy is spoken of
    public async Task The_senders_address_is_believed_from_the_named_proxy_only(string from, string line, string taken)
    {
        var options = Rigging.Web.Commands.Options.Read(["serve", "--no-demo", .. line.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);
        await using var parts = Rigging.Web.Commands.Host.Builder(options).Services.BuildServiceProvider();
        var http = new DefaultHttpContext { Connection = { RemoteIpAddress = IPAddress.Parse(from) } };
        http.Request.Headers["X-Forwarded-For"] = "192.0.2.66, 198.51.100.9";

        await new ForwardedHeadersMiddleware(_ => Task.CompletedTask, NullLoggerFactory.Instance, parts.GetRequiredService<IOptions<ForwardedHeadersOptions>>()).Invoke(http);

        Assert.Equal(taken, http.Connection.RemoteIpAddress.ToString());
    }
}
