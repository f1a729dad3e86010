using System.Collections.Concurrent;
using Npgsql;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Storage.Tests.Faults;

/// <summary>The client's own list: every note it sent, and whether it was told that it is on record.</summary>
sealed class Told
{
    readonly ConcurrentDictionary<string, bool> taken = [];
    TaskCompletionSource enough = new();
    int missing;

    public bool this[string text] => taken[text];

    public void Sent(string text) => taken[text] = false;

    public void Taken(string text)
    {
        taken[text] = true;
        if (Interlocked.Decrement(ref missing) == 0) enough.SetResult();
    }

    /// <summary>Done when the client was told so many times more.</summary>
    public Task Another(int times)
    {
        (enough, missing) = (new(TaskCreationOptions.RunContinuationsAsynchronously), times);
        return enough.Task;
    }

    /// <summary>What was acknowledged is there once; what was not may be there once; nothing else is.</summary>
    public void Compare(Ledger ledger, string moment)
    {
        var there = ledger.Entries.Select(entry => entry.Fact).OfType<Noted>().CountBy(note => note.Text).ToDictionary();
        foreach (var (text, acknowledged) in taken)
            Assert.True(!acknowledged || there.GetValueOrDefault(text) == 1, $"{moment}: “{text}” was acknowledged and is there {there.GetValueOrDefault(text)} times.");
        Assert.Empty(there.Keys.Except(taken.Keys));
        Assert.All(there.Values, times => Assert.Equal(1, times));
    }

    /// <summary>Returns when the server answers true; asks some hundred times a second.</summary>
    public static async Task Until(NpgsqlConnection connection, string condition, CancellationToken ct)
    {
        await using var ask = new NpgsqlCommand($"select {condition} from pg_sleep(0.01)", connection);
        while (await ask.ExecuteScalarAsync(ct) is not true) { }
    }

    /// <summary>A projection cannot be written while somebody holds its table.</summary>
    public const string SomebodyWaitsForTheProjection = "exists (select from pg_locks where not granted and relation = 'squawk'::regclass)";
}
