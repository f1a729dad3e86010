using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using NodaTime;
using Npgsql;
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
        services.AddDbContextFactory<RiggingDb>(options => RiggingDb.Use(options, connection));
        services.AddSingleton<LedgerStore>();
        services.AddSingleton<LedgerAudit>();
        services.AddSingleton<Sealer>();
        services.AddHostedService<DailySeal>();
        services.AddSingleton<SecurityBook>();

        // The listener's connection is held for ever and watched, so it stays out of the pool.
        services.AddSingleton(_ => NpgsqlDataSource.Create(new NpgsqlConnectionStringBuilder(connection) { Pooling = false, KeepAlive = 15 }.ConnectionString));
        services.AddSingleton<LedgerListener>();
        services.AddHostedService(provider => provider.GetRequiredService<LedgerListener>());

        services.AddDataProtection().SetApplicationName("rigging").PersistKeysToDbContext<RiggingDb>();
        return services;
    }
}
