using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace Rigging.Storage;

/// <summary>Asks the database all the time whether it answers, so that nobody else has to wait to find out: a frozen server takes a question and never answers it.</summary>
public sealed class DatabaseWatch(DatabaseSources sources, ILogger<DatabaseWatch> log) : BackgroundService
{
    static readonly TimeSpan Every = TimeSpan.FromSeconds(1);

    /// <summary>How long an answer may take before people are told that there is none.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    const string Silent = "The database does not answer.";

    readonly Lock asking = new();
    Task<string?>? asked;
    NpgsqlConnection? held;
    bool lost;
    TaskCompletionSource<string> gone = NotGone();

    /// <summary>Why nothing can be recorded now; null while the database answers.</summary>
    public string? Away { get; private set; }

    /// <summary>Completes when the database goes away, at once when it is away already.</summary>
    public Task<string> Gone => gone.Task;

    /// <summary>It went away or came back. Raised on a thread of the watch.</summary>
    public event Action? Changed;

    /// <summary>Null when it answers within this time, else why it does not. Many who ask at once are one question.</summary>
    public async Task<string?> Ask(TimeSpan within)
    {
        Task<string?> answer;
        lock (asking) answer = asked is { IsCompleted: false } ? asked : asked = Task.Run(Question);
        return await Task.WhenAny(answer, Task.Delay(within)) == answer ? await answer : Silent;
    }

    /// <summary>Somebody else found it away: everybody is told, and told again when the next question is answered.</summary>
    public void Missed(string why)
    {
        lost = true;
        Tell(why);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            if (await Ask(Patience) is { } why) Tell(why);
            await Task.Delay(Every, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    async Task<string?> Question()
    {
        // Our own connection may have died with a server that is back by now: asked once more, on a new one.
        var why = held is null ? await Attempt() : await Attempt() is null ? null : await Attempt();
        Tell(why);
        return why;
    }

    async Task<string?> Attempt()
    {
        try
        {
            await Answer();
            // What the pool still holds died with ours.
            if (lost) sources.Pool.Clear();
            lost = false;
            return null;
        }
        catch (Exception error) when (error is NpgsqlException or InvalidOperationException or IOException or TimeoutException)
        {
            lost = true;
            if (held is { } dead) await dead.DisposeAsync();
            held = null;
            return DatabaseAway.Why(error) ?? Silent;
        }
    }

    async Task Answer()
    {
        held ??= await sources.Held.OpenConnectionAsync();
        await using var one = new NpgsqlCommand("select exists (select from ledger_entry)", held);
        await one.ExecuteScalarAsync();
    }

    void Tell(string? why)
    {
        lock (asking)
        {
            if (why == Away) return;
            if (why is null) gone = NotGone();
            else gone.TrySetResult(why);
            Away = why;
        }
        if (why is null) log.LogWarning("The database answers again.");
        else log.LogWarning("Nothing can be recorded now: {Why}", why);
        Changed?.Invoke();
    }

    public override void Dispose()
    {
        held?.Dispose();
        base.Dispose();
    }

    static TaskCompletionSource<string> NotGone() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
