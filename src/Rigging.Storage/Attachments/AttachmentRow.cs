using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace Rigging.Storage.Attachments;

/// <summary>A picture that entries name by its hash. Added once; the application can neither change nor remove it.</summary>
public sealed partial class AttachmentRow
{
    /// <summary>Of <see cref="Bytes"/>, as stored and as served.</summary>
    public required byte[] Sha256 { get; init; }

    /// <summary>As told by its first bytes, not by its sender.</summary>
    public required string MediaType { get; init; }

    /// <summary>The picture without whatever its camera wrote beside it.</summary>
    public required byte[] Bytes { get; init; }

    public Instant StoredAt { get; init; }

    /// <summary>The hashes of the pictures that an entry names.</summary>
    public static IEnumerable<byte[]> NamedIn(string payload) => Named().Matches(payload).Select(match => Convert.FromHexString(match.Groups[1].Value));

    // Inside a text that a person typed the quotes would be escaped.
    [GeneratedRegex("\"sha256\":\"([0-9a-f]{64})\"")]
    private static partial Regex Named();
}

sealed class AttachmentTable : IEntityTypeConfiguration<AttachmentRow>
{
    public void Configure(EntityTypeBuilder<AttachmentRow> table)
    {
        table.ToTable("attachment", t => t.HasCheckConstraint("ck_attachment_sha256", "sha256 = sha256(bytes)"));
        table.HasKey(attachment => attachment.Sha256);
        table.Property(attachment => attachment.Sha256).HasColumnName("sha256").ValueGeneratedNever();
        table.Property(attachment => attachment.StoredAt).HasDefaultValueSql("now()");
    }
}
