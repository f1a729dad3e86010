using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;
using Rigging.Squawks.People;

namespace Rigging.Storage.Ledgers;

/// <summary>Hears of every append on every host and tells the open pages.</summary>
public sealed class LedgerListener(DatabaseSources sources, ILogger<LedgerListener> log) : BackgroundService
{
    static readonly TimeSpan RetryAfter = TimeSpan.FromSeconds(2);

    /// <summary>A squawk changed; null: any may have, because the connection was lost for a while. Raised on a thread of the listener.</summary>
    public event Action<SquawkId?>? Changed;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var missedSome = false;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await Listen(missedSome, stoppingToken);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (Exception error) when (error is NpgsqlException or System.IO.IOException or System.Net.Sockets.SocketException)
            {
                log.LogWarning("Lost the database's announcements ({Reason}); open pages refresh when it is back.", error.Message);
                missedSome = true;
                await Task.Delay(RetryAfter, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    async Task Listen(bool missedSome, CancellationToken ct)
    {
        await using var connection = await sources.Held.OpenConnectionAsync(ct);
        connection.Notification += (_, heard) =>
        {
            if (Guid.TryParse(heard.Payload, out var id))
                Tell(new SquawkId(id));
        };
        await using (var listen = new NpgsqlCommand($"listen {LedgerStore.Channel}", connection))
            await listen.ExecuteNonQueryAsync(ct);
        if (missedSome)
        {
            // What the pool still holds died with the connection we lost: no page that is told now may be handed it.
            sources.Pool.Clear();
            Tell(null);
        }
        while (true)
            await connection.WaitAsync(ct);
    }

    // One page that stumbles must not keep the news from the others.
    void Tell(SquawkId? squawk)
    {
        foreach (var page in Changed?.GetInvocationList().Cast<Action<SquawkId?>>() ?? [])
        {
            try
            {
                page(squawk);
            }
            catch (Exception error)
            {
                log.LogError(error, "A page failed to refresh.");
            }
        }
    }
}
