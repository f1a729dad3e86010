using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Storage.Database;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Tests.Cluster;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Storage.Tests.Faults;

/// <summary>PostgreSQL is killed at every point that matters; what the client was told is compared with what is there.</summary>
public sealed class KilledServerTests
{
    enum Moment { BeforeCommit, AfterCommit, InTheMiddle, AnyTime }

    // On few processors a crash lands anywhere by itself; the seed only says after how many acknowledgements.
    readonly Random chance = new(5);
    readonly Told told = new();

    [Fact]
    public async Task No_acknowledged_entry_is_lost_none_is_half_written_and_chains_hold()
    {
        using var scratch = new ScratchFolder();
        await using var database = new StruckDatabase(scratch.Data);
        await database.Start();
        var school = new SchoolHouse(async () =>
        {
            await DatabaseSetup.Prepare(database.Database.Admin);
            return database.Database;
        });
        await school.InitializeAsync();
        var squawk = (await school.Walk()).Id;
        var store = new LedgerStore(database, SystemClock.Instance);

        for (var round = 0; round < Rounds.Of(16); round++)
        {
            var moment = (Moment)(round % 4);
            var struck = await Struck(moment, round, database, store, school, squawk);
            NpgsqlConnection.ClearAllPools();
            await database.StartAgain();
            await Compare(moment, round, struck, database, store, squawk);
        }
        NpgsqlConnection.ClearAllPools();
    }

    /// <returns>The text whose fate the moment decides; null where chance does.</returns>
    async Task<string?> Struck(Moment moment, int round, StruckDatabase database, LedgerStore store, SchoolHouse school, SquawkId squawk)
    {
        var text = $"round {round}, alone";
        switch (moment)
        {
            case Moment.BeforeCommit or Moment.AfterCommit:
                (database.BeforeCommit, database.AfterCommit) = (moment == Moment.BeforeCommit, moment == Moment.AfterCommit);
                await Send(store, school, squawk, text);
                return text;

            case Moment.InTheMiddle:
                // The transaction stands half way.
                await using (var holder = new NpgsqlConnection(database.Database.Admin))
                {
                    await holder.OpenAsync();
                    await using var hold = new NpgsqlCommand("begin; lock table squawk in share mode", holder);
                    await hold.ExecuteNonQueryAsync();
                    var sent = Send(store, school, squawk, text);
                    await Told.Until(holder, Told.SomebodyWaitsForTheProjection, CancellationToken.None);
                    database.Kill();
                    await sent;
                }
                return text;

            default:
                var enough = told.Another(chance.Next(1, 25));
                using (var over = new CancellationTokenSource())
                {
                    var clients = Enumerable.Range(0, 4).Select(client => Task.Run(async () =>
                    {
                        for (var n = 0; !over.IsCancellationRequested; n++)
                            await Send(store, school, squawk, $"round {round}, client {client}, {n}");
                    })).ToList();
                    await enough;
                    database.Kill();
                    await over.CancelAsync();
                    await Task.WhenAll(clients);
                }
                return null;
        }
    }

    async Task Send(LedgerStore store, SchoolHouse school, SquawkId squawk, string text)
    {
        told.Sent(text);
        try
        {
            var seen = (await store.Load(squawk, CancellationToken.None))!.Length;
            if (await store.Append(squawk, seen, school.Pilot, new Noted(text, null), null, CancellationToken.None) is Outcome.Appended) told.Taken(text);
        }
        catch (Exception error) when (DatabaseAway.Is(error) || error is IOException or ObjectDisposedException or InvalidOperationException { InnerException: NpgsqlException })
        {
            // No acknowledgement: it may or may not be there.
        }
    }

    async Task Compare(Moment moment, int round, string? struck, StruckDatabase database, LedgerStore store, SquawkId squawk)
    {
        var ledger = (await store.Load(squawk, CancellationToken.None))!;
        told.Compare(ledger, $"Round {round} ({moment})");
        if (struck is not null)
        {
            Assert.False(told[struck]);
            Assert.Equal(moment == Moment.AfterCommit, ledger.Entries.Any(entry => entry.Fact is Noted note && note.Text == struck));
        }

        var audit = new LedgerAudit(database);
        var report = await audit.Verify(CancellationToken.None);
        Assert.True(report.Holds, $"Round {round} ({moment}): {string.Join('\n', report.Lines)}");
        await using var db = database.CreateDbContext();
        var row = await db.Squawks.AsNoTracking().SingleAsync();
        Assert.Equivalent(SquawkRow.Of(ledger), row, strict: true);
    }
}
