using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using NodaTime;
using Rigging.Storage.Doors;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Seals;

namespace Rigging.Storage;

public static class StorageRegistration
{
    /// <summary>The database, the ledgers, their announcements, and the keys that protect cookies.</summary>
    public static IServiceCollection AddRiggingStorage(this IServiceCollection services, string connection)
    {
        services.TryAddSingleton<IClock>(SystemClock.Instance);
        services.AddSingleton(_ => new DatabaseSources(connection));
        services.AddDbContextFactory<RiggingDb>((provider, options) => RiggingDb.Use(options, provider.GetRequiredService<DatabaseSources>().Pool));
        services.AddSingleton<LedgerStore>();
        services.AddSingleton<LedgerAudit>();
        services.AddSingleton<Sealer>();
        services.AddHostedService<DailySeal>();
        services.AddSingleton<SecurityBook>();

        services.AddSingleton<LedgerListener>();
        services.AddHostedService(provider => provider.GetRequiredService<LedgerListener>());
        services.AddSingleton<DatabaseWatch>();
        services.AddHostedService(provider => provider.GetRequiredService<DatabaseWatch>());

        services.AddDataProtection().SetApplicationName("rigging").PersistKeysToDbContext<RiggingDb>();
        return services;
    }
}
