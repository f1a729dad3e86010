using Microsoft.Extensions.Diagnostics.HealthChecks;
using Rigging.Storage;

namespace Rigging.Web.Commands;

/// <summary>Ready while ledgers can be read; whoever asks is answered in time, whatever the database does.</summary>
sealed class DatabaseReady(DatabaseWatch watch) : IHealthCheck
{
    static readonly TimeSpan Within = TimeSpan.FromSeconds(1.5);

    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        await watch.Ask(Within) is { } why ? HealthCheckResult.Unhealthy(why) : HealthCheckResult.Healthy();
}
