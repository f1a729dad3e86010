using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Storage.Doors;

public enum SecurityEventKind
{
    SignedIn,
    SignInFailed,
    AccountLocked,
    SignedOut,
    SessionEnded,
    PasswordChanged,
    PasskeyAdded,
    PasskeyRemoved,
    SigningFailed,
    PersonAdded,
    AuthorityChanged,
    CertificateEntered,
    AccountClosed,
    AccountReopened,
    PersonErased,
    InvitationMade,
    InvitationUsed,
    Exported,
    Refused,
    PasskeysDemanded,
    PasswordsAllowed,
    TotalTimeCorrected,
    PersonRenamed,
}

/// <summary>Something that happened at the doors: kept for ever, changed never. People are pseudonyms here too.</summary>
public sealed class SecurityEventRow
{
    public long Id { get; private init; }
    public required Instant At { get; init; }
    public required SecurityEventKind Kind { get; init; }

    /// <summary>Whom it concerns; null when nobody is known by what was typed, which is not kept.</summary>
    public PersonId? Whom { get; init; }

    /// <summary>Who did it; null when nobody was signed in.</summary>
    public PersonId? By { get; init; }

    public string? Address { get; init; }

    /// <summary>What else there is to say; never a secret, a name or what was typed at the door.</summary>
    public required string About { get; init; }
}

sealed class SecurityEventTable : IEntityTypeConfiguration<SecurityEventRow>
{
    public const string Name = "security_event";

    public void Configure(EntityTypeBuilder<SecurityEventRow> table)
    {
        // No foreign keys: erasing a person leaves the events alone.
        table.ToTable(Name);
        table.Property(happened => happened.Id).UseIdentityAlwaysColumn();
        table.HasIndex(happened => happened.At);
        table.Property(happened => happened.About).HasConversion(Columns.TypedText);
    }
}

/// <summary>Writes down what happens at the doors. The application's role may add lines and read them, no more.</summary>
public sealed class SecurityBook(IDbContextFactory<RiggingDb> databases, IClock clock)
{
    public async Task Note(SecurityEventKind kind, PersonId? whom, PersonId? by, string? address, string about, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        db.Set<SecurityEventRow>().Add(new() { At = clock.GetCurrentInstant(), Kind = kind, Whom = whom, By = by, Address = address, About = about });
        await db.SaveChangesAsync(ct);
    }

    /// <param name="before">Only older ones; null for the newest.</param>
    public async Task<IReadOnlyList<SecurityEventRow>> Newest(int most, long? before = null, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Set<SecurityEventRow>().AsNoTracking().Where(happened => before == null || happened.Id < before)
            .OrderByDescending(happened => happened.Id).Take(most).ToListAsync(ct);
    }
}
