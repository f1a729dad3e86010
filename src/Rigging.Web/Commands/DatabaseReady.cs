using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Rigging.Storage;

namespace Rigging.Web.Commands;

/// <summary>Ready while ledgers can be read.</summary>
sealed class DatabaseReady(IDbContextFactory<RiggingDb> databases) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            await using var db = await databases.CreateDbContextAsync(cancellationToken);
            await db.Entries.AnyAsync(cancellationToken);
            return HealthCheckResult.Healthy();
        }
        catch (Exception error) when (error is Npgsql.NpgsqlException or InvalidOperationException)
        {
            return HealthCheckResult.Unhealthy("The database does not answer.");
        }
    }
}
