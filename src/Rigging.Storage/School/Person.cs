using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Storage.School;

/// <summary>A person in the school's register. Ledgers know only <see cref="Id"/>, so a name can be erased without touching them.</summary>
public sealed class PersonRow
{
    public PersonId Id { get; init; } = new(Guid.CreateVersion7());

    /// <summary>Counts from 1; people see "P-7".</summary>
    public required int Number { get; init; }

    public required string Name { get; set; }
    public string? Email { get; set; }

    /// <summary>When name, contacts and certificate numbers were taken out of the register at the person's wish; null: they stand.</summary>
    public Instant? ErasedAt { get; set; }

    /// <summary>The one squawk a guest was asked in for; null for the school's own people.</summary>
    public SquawkId? GuestOf { get; init; }

    /// <summary>When a guest's access ends by itself.</summary>
    public Instant? GuestUntil { get; set; }

    /// <summary>When the person left: nothing can be done in their name any more; what they signed stands.</summary>
    public Instant? LeftAt { get; set; }

    public List<PersonAuthorityRow> Authorities { get; init; } = [];
    public List<CertificateRow> Certificates { get; init; } = [];
}

/// <summary>One change of a person's name in the register: what was signed before it was signed under the earlier one. Goes with the person's name when that is erased.</summary>
public sealed class PersonNameChangeRow
{
    public long Id { get; private init; }
    public required PersonId PersonId { get; init; }
    public required Instant At { get; init; }
    public required PersonId ChangedBy { get; init; }
    public required string FromName { get; init; }
    public required string ToName { get; init; }
    public required string Reason { get; init; }
}

/// <summary>What the school lets a person do; one row per authority.</summary>
public sealed class PersonAuthorityRow
{
    public PersonId PersonId { get; init; }
    public required Authority Authority { get; init; }
}

public sealed class CertificateRow
{
    public CertificateId Id { get; init; } = new(Guid.CreateVersion7());
    public PersonId PersonId { get; init; }

    /// <summary>A rule set's word for it, such as "mechanic, airframe rating".</summary>
    public required string Kind { get; set; }

    public required string Number { get; set; }

    /// <summary>Last day on which it is valid; null when it does not expire.</summary>
    public LocalDate? ValidUntil { get; set; }

    /// <summary>Ratings beside those the kind names, in words.</summary>
    public string? Ratings { get; set; }

    /// <summary>Last day up to which recent experience is stated; null when nobody stated any.</summary>
    public LocalDate? RecentUntil { get; set; }

    /// <summary>What the statement of recent experience rests on.</summary>
    public string? RecentBecause { get; set; }
}

/// <summary>A person's way to sign in.</summary>
public sealed class User : IdentityUser<Guid>
{
    public PersonId PersonId { get; init; }

    /// <summary>Came with the invented school: its password is published, so it counts on this machine only.</summary>
    public bool Demo { get; init; }
}

sealed class PersonTable : IEntityTypeConfiguration<PersonRow>
{
    public void Configure(EntityTypeBuilder<PersonRow> table)
    {
        table.ToTable("person");
        table.HasIndex(person => person.Number).IsUnique();
        table.HasOne<Ledgers.SquawkRow>().WithMany().HasForeignKey(person => person.GuestOf);
        table.HasMany(person => person.Authorities).WithOne().HasForeignKey(row => row.PersonId);
        table.HasMany(person => person.Certificates).WithOne().HasForeignKey(row => row.PersonId);
    }
}

sealed class PersonNameChangeTable : IEntityTypeConfiguration<PersonNameChangeRow>
{
    public void Configure(EntityTypeBuilder<PersonNameChangeRow> table)
    {
        table.ToTable("person_name_change");
        table.Property(change => change.Id).UseIdentityAlwaysColumn();
        table.HasOne<PersonRow>().WithMany().HasForeignKey(change => change.PersonId);
        table.HasOne<PersonRow>().WithMany().HasForeignKey(change => change.ChangedBy);
    }
}

sealed class PersonAuthorityTable : IEntityTypeConfiguration<PersonAuthorityRow>
{
    public void Configure(EntityTypeBuilder<PersonAuthorityRow> table)
    {
        table.ToTable("person_authority");
        table.HasKey(row => new { row.PersonId, row.Authority });
    }
}

sealed class CertificateTable : IEntityTypeConfiguration<CertificateRow>
{
    public void Configure(EntityTypeBuilder<CertificateRow> table) => table.ToTable("certificate");
}

sealed class UserTable : IEntityTypeConfiguration<User>
{
    public void Configure(EntityTypeBuilder<User> table)
    {
        table.ToTable("user");
        table.HasOne<PersonRow>().WithOne().HasForeignKey<User>(user => user.PersonId);
    }
}
