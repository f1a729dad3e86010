using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Storage.Drafts;

/// <summary>What a person has typed and not yet sent.</summary>
public sealed class DraftRow
{
    public required PersonId PersonId { get; init; }

    /// <summary>Which form, such as <c>report</c> or <c>work:S-12</c>.</summary>
    public required string Key { get; init; }

    public required string Json { get; set; }
    public required Instant UpdatedAt { get; set; }
}

sealed class DraftTable : IEntityTypeConfiguration<DraftRow>
{
    public void Configure(EntityTypeBuilder<DraftRow> table)
    {
        table.ToTable("draft");
        table.HasKey(draft => new { draft.PersonId, draft.Key });
        table.Property(draft => draft.Json).HasConversion(Columns.TypedText);
        table.HasOne<School.PersonRow>().WithMany().HasForeignKey(draft => draft.PersonId);
    }
}
