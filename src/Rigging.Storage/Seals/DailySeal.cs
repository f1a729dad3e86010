using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Rigging.Storage.Seals;

/// <summary>Sees to it that each day is sealed soon after it ended, or when the program next runs.</summary>
public sealed class DailySeal(Sealer sealer, ILogger<DailySeal> log) : BackgroundService
{
    static readonly TimeSpan Round = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (await sealer.SealTheDay(stoppingToken) is { } seal)
                    log.LogInformation("Seal {Number} of {Day}: {Ledgers} ledgers, {Entries} entries, SHA-256 {Hash}", seal.Number, seal.Day, seal.Heads.Count, seal.Entries, Convert.ToHexStringLower(seal.Hash));
            }
            catch (Exception error) when (error is not OperationCanceledException)
            {
                log.LogWarning("The day could not be sealed ({Reason}); it is tried again.", error.Message);
            }
            await Task.Delay(Round, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
