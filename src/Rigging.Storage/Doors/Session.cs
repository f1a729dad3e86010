using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Storage.School;

namespace Rigging.Storage.Doors;

/// <summary>One person signed in on one device, until it ends. The cookie names it; this row says whether it still counts.</summary>
public sealed class SessionRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public required PersonId PersonId { get; init; }
    public required Instant StartedAt { get; init; }

    /// <summary>To the minute.</summary>
    public required Instant SeenAt { get; set; }

    /// <summary>password, passkey or invitation.</summary>
    public required string Method { get; init; }

    public string? Address { get; init; }

    /// <summary>What the browser says of itself, cut short.</summary>
    public string? Device { get; init; }

    public Instant? EndedAt { get; set; }
}

/// <summary>A one-time way in for a person without a password: a guest, somebody new, somebody who forgot it.</summary>
public sealed class InvitationRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();

    /// <summary>The code itself is kept nowhere.</summary>
    public required string CodeSha256 { get; init; }

    public required PersonId PersonId { get; init; }
    public required PersonId MadeBy { get; init; }
    public required Instant MadeAt { get; init; }
    public required Instant ExpiresAt { get; init; }
    public Instant? UsedAt { get; set; }
}

sealed class SessionTable : IEntityTypeConfiguration<SessionRow>
{
    public void Configure(EntityTypeBuilder<SessionRow> table)
    {
        table.ToTable("session");
        table.HasIndex(session => session.PersonId);
        table.HasOne<PersonRow>().WithMany().HasForeignKey(session => session.PersonId);
        table.Property(session => session.Device).HasConversion(Columns.TypedText!);
    }
}

sealed class InvitationTable : IEntityTypeConfiguration<InvitationRow>
{
    public void Configure(EntityTypeBuilder<InvitationRow> table)
    {
        table.ToTable("invitation");
        table.HasIndex(invitation => invitation.CodeSha256).IsUnique();
        table.HasOne<PersonRow>().WithMany().HasForeignKey(invitation => invitation.PersonId);
        table.HasOne<PersonRow>().WithMany().HasForeignKey(invitation => invitation.MadeBy);
    }
}
