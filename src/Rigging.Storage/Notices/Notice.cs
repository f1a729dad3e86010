using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Storage.Notices;

/// <summary>Something one person should know, written in the same transaction as the entry it is about.</summary>
public sealed class NoticeRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public required SquawkId SquawkId { get; init; }

    /// <summary>The entry it is about.</summary>
    public required int Sequence { get; init; }

    public required NoticeKind Kind { get; init; }
    public required PersonId PersonId { get; init; }
    public required string Subject { get; init; }
    public required string Body { get; init; }
    public required Instant CreatedAt { get; init; }

    /// <summary>When the person saw it on the screen; null: not yet.</summary>
    public Instant? ReadAt { get; set; }

    /// <summary>When it left by e-mail; null: not yet, or no e-mail is set up.</summary>
    public Instant? SentAt { get; set; }

    public int Attempts { get; set; }
}

public enum NoticeKind { Filed, Grounded, YourTurn, BackInService, AskedAgain }

sealed class NoticeTable : IEntityTypeConfiguration<NoticeRow>
{
    public void Configure(EntityTypeBuilder<NoticeRow> table)
    {
        table.ToTable("notice");
        table.Property(notice => notice.Subject).HasConversion(Columns.TypedText);
        table.Property(notice => notice.Body).HasConversion(Columns.TypedText);
        table.HasOne<School.PersonRow>().WithMany().HasForeignKey(notice => notice.PersonId);
        table.HasIndex(notice => notice.PersonId).HasFilter("read_at is null").HasDatabaseName("ix_notice_unread");
        table.HasIndex(notice => notice.CreatedAt).HasFilter("sent_at is null").HasDatabaseName("ix_notice_unsent");
        table.HasIndex(notice => new { notice.SquawkId, notice.Sequence, notice.Kind, notice.PersonId }).IsUnique();
    }
}
