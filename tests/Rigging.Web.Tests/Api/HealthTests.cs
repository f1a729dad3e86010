using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Rigging.Storage;
using Rigging.Storage.Tests;

namespace Rigging.Web.Tests.Api;

public sealed class HealthTests(Postgres postgres)
{
    [Fact]
    public async Task A_host_whose_database_answers_is_live_and_ready()
    {
        await using var site = await TestSite.Start(postgres);

        Assert.Equal(HttpStatusCode.OK, await Ask(site, "/health/live"));
        Assert.Equal(HttpStatusCode.OK, await Ask(site, "/health/ready"));
    }

    [Fact]
    public async Task A_host_without_its_database_is_live_and_not_ready()
    {
        await using var site = await TestSite.Start(postgres, change: services => services.Replace(ServiceDescriptor.Singleton<IDbContextFactory<RiggingDb>>(new Nowhere())));

        Assert.Equal(HttpStatusCode.OK, await Ask(site, "/health/live"));
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await Ask(site, "/health/ready"));
    }

    static async Task<HttpStatusCode> Ask(TestSite site, string path)
    {
        using var answer = await site.Browser().Http.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    sealed class Nowhere : IDbContextFactory<RiggingDb>
    {
        public RiggingDb CreateDbContext() => RiggingDb.Open("Host=/nowhere-at-all;Username=nobody;Database=none;Timeout=2");
    }
}
