using System.Text.Json;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Tests;

/// <summary>What a release has stored must read, write back and fold for ever. These files are never regenerated: a new shape is a new version and a new file.</summary>
public class FrozenTests
{
    static string Path(params string[] parts) => System.IO.Path.Combine([AppContext.BaseDirectory, "Data", .. parts]);

    static string Payload(string kind, int version) => File.ReadAllText(Path("payloads", $"{kind}.{version}.json")).TrimEnd('\n');

    public static TheoryData<string> Kinds => [.. EntryCodec.Kinds];

    static int Version(string kind) => EntryCodec.VersionOf(MovesOnPaper.Example(kind));

    [Theory, MemberData(nameof(Kinds))]
    public void Every_version_of_a_kind_has_its_frozen_payload_and_reads(string kind)
    {
        for (var version = 1; version <= Version(kind); version++)
        {
            Assert.True(File.Exists(Path("payloads", $"{kind}.{version}.json")), $"No frozen payload for {kind}, version {version}.");
            var entry = EntryCodec.Read(7, kind, version, Payload(kind, version));
            Assert.IsType(EntryCodec.TypeOf(kind), entry.Fact);
            Assert.Equal((7, "2026-03-02T12:34:56.789Z"), (entry.Sequence, entry.At.ToString("uuuu-MM-dd'T'HH:mm:ss.fff'Z'", null)));
            Assert.Equal(MoveTable.IsSigned(entry.Fact.GetType()), entry.Signature is not null);
        }
    }

    [Theory, MemberData(nameof(Kinds))]
    public void The_newest_version_writes_back_to_the_same_bytes(string kind) =>
        Assert.Equal(Payload(kind, Version(kind)), EntryCodec.Write(EntryCodec.Read(7, kind, Version(kind), Payload(kind, Version(kind)))));

    /// <summary>A property added to a record without a new version shows here: the frozen payload has every property the record has.</summary>
    [Theory, MemberData(nameof(Kinds))]
    public void The_frozen_payload_holds_every_property_of_the_record(string kind)
    {
        using var payload = JsonDocument.Parse(Payload(kind, Version(kind)));
        Assert.Equal(
            EntryCodec.TypeOf(kind).GetProperties().Where(p => p.Name != "EqualityContract").Select(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name)),
            payload.RootElement.GetProperty("fact").EnumerateObject().Select(p => p.Name));
    }

    [Theory, MemberData(nameof(Kinds))]
    public void A_later_version_of_a_kind_is_shown_as_newer_and_never_guessed_at(string kind)
    {
        var payload = Payload(kind, 1);
        var entry = EntryCodec.Read(7, kind, Version(kind) + 1, payload);
        Assert.Equal(new NewerEntry(kind, Version(kind) + 1, payload), entry.Fact);
        Assert.True(SquawkState.Nothing.With(entry).HasNewerEntries);
    }

    [Fact]
    public void A_kind_nobody_knows_is_shown_as_newer_keeps_the_stage_and_is_never_written()
    {
        var entry = EntryCodec.Read(20, "paint-survey", 1, Payload("note", 1).Replace("\"text\"", "\"colour\"", StringComparison.Ordinal));
        var state = School.Called.With(entry).State;

        Assert.Equal("paint-survey", Assert.IsType<NewerEntry>(entry.Fact).Kind);
        Assert.Equal((Stage.Called, true), (state.Stage!.Value, state.HasNewerEntries));
        Assert.Equal(("paint-survey", 1), (EntryCodec.KindOf(entry.Fact), EntryCodec.VersionOf(entry.Fact)));
        Assert.Throws<ArgumentException>(() => EntryCodec.Write(entry));
    }

    /// <summary>Before a clearing was signed there were ledgers with unsigned ones: what they meant then they mean for ever.</summary>
    [Fact]
    public void A_grounding_that_was_lifted_without_a_signature_stays_lifted()
    {
        var unsigned = EntryCodec.Read(2, "ground-check", 1, EntryCodec.Write(new(2, School.Noon, School.Mechanic.Id, People.Authority.Mechanic, School.Checks.Single(check => check.Check == Check.DamageInspection))));
        var state = School.Empty.Do(School.Pilot, School.Report with { RedFlags = [RedFlag.Bang] }).With(unsigned).State;

        Assert.Equal((false, FlightStatus.Held), (state.RedFlagged, state.FlightStatus));
    }

    [Fact]
    public void No_frozen_payload_is_left_over() => Assert.All(Directory.GetFiles(Path("payloads")), file =>
        Assert.Contains(System.IO.Path.GetFileName(file).Split('.')[0], EntryCodec.Kinds));

    /// <summary>The hashes were recomputed once by an independent program in another language from the description of the chain.</summary>
    [Fact]
    public void A_whole_stored_ledger_holds_and_folds_to_what_it_meant()
    {
        var lines = File.ReadAllLines(Path("ledgers", "half-a-flat.1.txt"));
        var (installation, squawk) = (Guid.Parse(lines[1].Split(' ')[1]), new People.SquawkId(Guid.Parse(lines[2].Split(' ')[1])));
        List<SealedEntry> stored = [];
        foreach (var parts in lines[3..].Select(line => line.Split(' ', 5)))
            stored.Add(new(squawk, int.Parse(parts[0], null), parts[1], int.Parse(parts[2], null), parts[4], stored.LastOrDefault()?.Hash ?? Chain.Root, Convert.FromHexString(parts[3])));

        var state = new Ledger(squawk, stored.Select(s => s.Open())).State;

        Assert.Null(Chain.FirstBroken(installation, stored));
        Assert.Equal((19, Stage.Closed, 1, FlightStatus.MayFly), (state.Length, state.Stage!.Value, state.Round, state.FlightStatus));
        Assert.Equal(new BushingAngles(15, 15, 0, 0), state.Settings);
        Assert.Equal([School.Mechanic.Id], state.Workers);
        Assert.Equal(School.Inspector.Id, state.Inspection!.Value.By);
        Assert.Equal(VerdictWord.Accepted, state.Verdict!.Verdict);
        // Fuel was told in words and the tension without a tool: on record, and no longer taken for measured.
        Assert.Equal([Prerequisite.FuelAndSeats, Prerequisite.Cables], state.MissingPrerequisites);
    }
}
