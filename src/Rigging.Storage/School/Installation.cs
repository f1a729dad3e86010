using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace Rigging.Storage.School;

/// <summary>This installation and the one school it serves: a single row.</summary>
/// <remarks>The id goes into every entry's hash, so a ledger cannot be passed off as another school's.</remarks>
public sealed class InstallationRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public required string SchoolName { get; set; }

    /// <summary>Name of the rule set the school works under, such as <c>united-states</c>.</summary>
    public required string RuleSet { get; set; }

    /// <summary>IANA name; screens and paper show times in it.</summary>
    public required string TimeZone { get; set; }

    public required Instant Created { get; init; }

    /// <summary>Of the PIN with which somebody in a cockpit may report without an account; null: only accounts may.</summary>
    public string? CockpitPinHash { get; set; }

    /// <summary>Passwords sign nothing, and let in nobody who has a passkey.</summary>
    public bool PasskeysOnly { get; set; }

    /// <summary>True when the invented school was loaded: its passwords are published.</summary>
    public bool Demo { get; init; }

    // Always true and unique: a second row has nowhere to go.
    internal bool Singleton { get; private init; } = true;
}

sealed class InstallationTable : IEntityTypeConfiguration<InstallationRow>
{
    public void Configure(EntityTypeBuilder<InstallationRow> table)
    {
        table.ToTable("installation");
        table.Property(installation => installation.Singleton);
        table.HasIndex(installation => installation.Singleton).IsUnique();
        table.ToTable(t => t.HasCheckConstraint("ck_installation_singleton", "singleton"));
    }
}
