using Rigging.Squawks.Tests;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Testing;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Storage.School;
using Rigging.Storage.Tests;
using Rigging.Web.SignIn;

namespace Rigging.Web.Tests;

/// <summary>The whole site in memory, on a database of its own, reached through its front door.</summary>
public sealed class TestSite : IAsyncDisposable
{
    public const string Password = "a-password-for-tests";
    public static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 18, 0);

    readonly WebApplication app;
    readonly TestDatabase database;

    TestSite(WebApplication app, TestDatabase database) => (this.app, this.database) = (app, database);

    public IServiceProvider Services => app.Services;

    public string Connection => database.App;

    /// <summary>As the owner of the tables: what an intruder in the database could do.</summary>
    public string Owner => database.Owner;

    public FakeClock Clock => (FakeClock)Services.GetRequiredService<IClock>();

    /// <param name="loopbackOnly">Whether the site believes that nobody but this machine reaches it.</param>
    public static async Task<TestSite> Start(Postgres postgres, bool loopbackOnly = true, Action<IServiceCollection>? change = null, Dictionary<string, string?>? settings = null)
    {
        var database = await postgres.Create();
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            ApplicationName = "rigging",
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = "Testing",
        });
        builder.WebHost.UseTestServer();
        builder.WebHost.UseStaticWebAssets();
        builder.Logging.ClearProviders();
        builder.Configuration.AddInMemoryCollection(settings ?? []);
        builder.Services.AddRiggingStorage(database.App);
        builder.Services.AddSingleton(new Reach(loopbackOnly));
        Site.AddParts(builder.Services);
        builder.Services.Replace(ServiceDescriptor.Singleton<IClock>(new FakeClock(Noon)));
        change?.Invoke(builder.Services);
        var app = builder.Build();
        Site.Map(app);
        await app.StartAsync();
        return new(app, database);
    }

    /// <summary>A browser that keeps its cookies and follows no redirect by itself.</summary>
    public Browser Browser() => new(app.GetTestServer());

    /// <summary>One request as it would come from that address.</summary>
    public Task<HttpContext> Ask(string path, IPAddress from) => app.GetTestServer().SendAsync(http =>
    {
        http.Connection.RemoteIpAddress = from;
        (http.Request.Method, http.Request.Scheme, http.Request.Host, http.Request.Path) = ("GET", "http", new("localhost"), path);
    });

    /// <summary>A browser in which this person has signed in.</summary>
    public async Task<Browser> SignedIn(string email, string password = Password)
    {
        var browser = Browser();
        var answer = await browser.Submit(await browser.Open("/sign-in"), new() { ["Form.Name"] = email, ["Form.Password"] = password });
        Assert.True(answer.Status == HttpStatusCode.Redirect, $"{email} was not let in: {answer.Text}");
        return browser;
    }

    public RiggingDb OpenDatabase() => RiggingDb.Open(database.App);

    /// <summary>The school of the installation: a real one unless said otherwise.</summary>
    public async Task AddSchool(bool demo = false)
    {
        await using var db = OpenDatabase();
        db.Installations.Add(new() { SchoolName = "Invented Flying School", RuleSet = "united-states", TimeZone = "America/Chicago", Created = Noon, Demo = demo });
        db.Attachments.Add(new() { Sha256 = Convert.FromHexString(School.PictureHash), MediaType = "image/png", Bytes = School.Picture });
        await db.SaveChangesAsync();
    }

    public async Task<PersonId> AddPerson(string name, string email, Authority[] authorities, bool demo = false, string password = Password, PersonId? id = null, IEnumerable<CertificateRow>? certificates = null)
    {
        await using var scope = Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<RiggingDb>();
        var person = new PersonRow
        {
            Id = id ?? new(Guid.CreateVersion7()),
            Number = (await db.People.MaxAsync(row => (int?)row.Number) ?? 0) + 1,
            Name = name,
            Email = email,
            Authorities = [.. authorities.Select(authority => new PersonAuthorityRow { Authority = authority })],
            Certificates = [.. certificates ?? []],
        };
        db.People.Add(person);
        await db.SaveChangesAsync();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<User>>();
        var made = await users.CreateAsync(new User { UserName = email, Email = email, PersonId = person.Id, Demo = demo }, password);
        Assert.True(made.Succeeded, string.Join("; ", made.Errors.Select(error => error.Description)));
        return person.Id;
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        await database.Drop();
    }
}
