using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace Rigging.Storage.Seals;

/// <summary>One day's seal as it was made. Added once; the application can neither change nor remove it.</summary>
public sealed class SealRow
{
    /// <summary>Counts from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The school's day that it stands for.</summary>
    public required LocalDate Day { get; init; }

    public required Instant SealedAt { get; init; }
    public required int Ledgers { get; init; }
    public required int Entries { get; init; }

    /// <summary>The exact text that was hashed and is exported.</summary>
    public required string Text { get; init; }

    /// <summary>SHA-256 of <see cref="Text"/>.</summary>
    public required byte[] Hash { get; init; }
}

sealed class SealTable : IEntityTypeConfiguration<SealRow>
{
    public void Configure(EntityTypeBuilder<SealRow> table)
    {
        table.ToTable("seal", t => t.HasCheckConstraint("ck_seal_hash", "octet_length(hash) = 32"));
        table.HasKey(seal => seal.Number);
        table.Property(seal => seal.Number).ValueGeneratedNever();
    }
}
