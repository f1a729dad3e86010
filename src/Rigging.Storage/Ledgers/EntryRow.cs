using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Storage.Ledgers;

/// <summary>One ledger entry as stored. Inserted once; nobody but the owner of the database can change or remove it.</summary>
public sealed class EntryRow
{
    public required SquawkId SquawkId { get; init; }

    /// <summary>Counts from 1 within the squawk.</summary>
    public required int Sequence { get; init; }

    public required string Kind { get; init; }
    public required int Version { get; init; }

    /// <summary>The exact bytes that were hashed.</summary>
    public required string Payload { get; init; }

    public required byte[] PreviousHash { get; init; }
    public required byte[] Hash { get; init; }

    /// <summary>When the database took it. Not hashed; the entry's own time is in the payload.</summary>
    public Instant RecordedAt { get; init; }

    public static EntryRow Of(SealedEntry entry) => new()
    {
        SquawkId = entry.Squawk,
        Sequence = entry.Sequence,
        Kind = entry.Kind,
        Version = entry.Version,
        Payload = entry.Payload,
        PreviousHash = entry.PreviousHash,
        Hash = entry.Hash,
    };

    public SealedEntry Sealed() => new(SquawkId, Sequence, Kind, Version, Payload, PreviousHash, Hash);
}

sealed class EntryTable : IEntityTypeConfiguration<EntryRow>
{
    /// <summary>Carries two clashing appends to the second one's ears.</summary>
    public const string Key = "pk_ledger_entry";

    public void Configure(EntityTypeBuilder<EntryRow> table)
    {
        table.ToTable("ledger_entry", t =>
        {
            t.HasCheckConstraint("ck_ledger_entry_sequence", "sequence > 0");
            t.HasCheckConstraint("ck_ledger_entry_hashes", "octet_length(previous_hash) = 32 and octet_length(hash) = 32");
        });
        table.HasKey(entry => new { entry.SquawkId, entry.Sequence }).HasName(Key);
        table.Property(entry => entry.Sequence).ValueGeneratedNever();
        table.Property(entry => entry.RecordedAt).HasDefaultValueSql("now()");
        // For queries only: jsonb reorders keys, so it is never hashed. It knows no NUL, which text typed by people may hold as an escape.
        table.Property<string>("PayloadJson").HasColumnType("jsonb")
            .HasComputedColumnSql(@"replace(payload, '\u0000', '\ufffd')::jsonb", stored: true);
        table.HasIndex(entry => entry.Kind);
    }
}
