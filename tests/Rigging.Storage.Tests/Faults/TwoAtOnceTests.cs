using Rigging.Squawks.Entries;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Storage.Tests.Faults;

public sealed class TwoAtOnceTests(Postgres postgres) : IAsyncLifetime
{
    readonly SchoolHouse school = new(postgres);

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => school.InitializeAsync();

    public ValueTask DisposeAsync() => school.DisposeAsync();

    [Fact]
    public async Task Of_two_who_act_on_one_squawk_one_wins_the_other_is_told_and_nothing_is_lost()
    {
        var ledger = await school.Walk();
        List<string> wanted = [];
        for (var round = 0; round < Rounds.Of(50); round++)
        {
            var seen = ledger.Length;
            // The mechanic's call changes what the aircraft may do; the pilot's note changes nothing: both are somebody's words.
            (Squawks.People.PersonId Who, Fact Fact)[] acts =
            [
                (school.Mechanic, new Called(round % 2 == 0 ? Call.MayFlyWithLimits : Call.Grounded, $"call {round}", "Day, dual.")),
                (school.Pilot, new Noted($"note {round}", null)),
            ];
            wanted.AddRange([$"call {round}", $"note {round}"]);

            var outcomes = await Task.WhenAll(acts.Select(act => Task.Run(() => school.Ledgers.Append(ledger.Id, seen, act.Who, act.Fact, null, Ct))));

            var won = Assert.Single(outcomes.OfType<Outcome.Appended>());
            var told = Assert.Single(outcomes.OfType<Outcome.Stale>());
            Assert.Equal(EntryCodec.Write(won.Entry), EntryCodec.Write(Assert.Single(told.New)));
            var loser = acts[outcomes[0] is Outcome.Stale ? 0 : 1];
            ledger = Assert.IsType<Outcome.Appended>(await school.Ledgers.Append(ledger.Id, told.Now.Length, loser.Who, loser.Fact, null, Ct)).Ledger;
        }

        var said = (await school.Ledgers.Load(ledger.Id, Ct))!.Entries.Select(entry => entry.Fact).Select(fact => fact switch { Called call => call.Reason, Noted note => note.Text, _ => "" }).Where(text => text.Length > 0);
        Assert.Equal(wanted.Order(), said.Order());
        Assert.True((await school.Audit.Verify(Ct)).Holds);
    }
}
