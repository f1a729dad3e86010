using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Npgsql;
using Rigging.Storage.Attachments;
using Rigging.Storage.Doors;
using Rigging.Storage.Drafts;
using Rigging.Storage.Fleet;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Notices;
using Rigging.Storage.School;
using Rigging.Storage.Seals;
using Rigging.Storage.Tools;

namespace Rigging.Storage;

/// <summary>The school's database. Ledger entries are written by <see cref="LedgerStore"/> alone.</summary>
public sealed class RiggingDb(DbContextOptions<RiggingDb> options) : IdentityUserContext<User, Guid>(options), IDataProtectionKeyContext
{
    public DbSet<InstallationRow> Installations => Set<InstallationRow>();
    public DbSet<PersonRow> People => Set<PersonRow>();
    public DbSet<PersonNameChangeRow> NameChanges => Set<PersonNameChangeRow>();
    public DbSet<AircraftRow> Aircraft => Set<AircraftRow>();
    public DbSet<AirframeRow> Airframes => Set<AirframeRow>();
    public DbSet<ToolRow> Tools => Set<ToolRow>();
    public DbSet<EntryRow> Entries => Set<EntryRow>();
    public DbSet<SealRow> Seals => Set<SealRow>();
    public DbSet<AttachmentRow> Attachments => Set<AttachmentRow>();
    public DbSet<SquawkRow> Squawks => Set<SquawkRow>();
    public DbSet<DraftRow> Drafts => Set<DraftRow>();
    public DbSet<SessionRow> Sessions => Set<SessionRow>();
    public DbSet<InvitationRow> Invitations => Set<InvitationRow>();
    public DbSet<NoticeRow> Notices => Set<NoticeRow>();
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    // Said here and not in the host's options, so that the model is the same wherever the context is made.
    protected override Version SchemaVersion => IdentitySchemaVersions.Version3;

    /// <summary>The one way to reach the database; shared by the host, the commands, the tests and dotnet-ef.</summary>
    public static DbContextOptionsBuilder Use(DbContextOptionsBuilder options, string connection) =>
        options.UseNpgsql(connection, npgsql => npgsql.UseNodaTime()).UseSnakeCaseNamingConvention();

    /// <summary>The same from a pool of one's own.</summary>
    public static DbContextOptionsBuilder Use(DbContextOptionsBuilder options, NpgsqlDataSource pool) =>
        options.UseNpgsql(pool, npgsql => npgsql.UseNodaTime()).UseSnakeCaseNamingConvention();

    public static RiggingDb Open(string connection)
    {
        var options = new DbContextOptionsBuilder<RiggingDb>();
        Use(options, connection);
        return new(options.Options);
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) => Columns.Configure(configurationBuilder);

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.Entity<IdentityUserClaim<Guid>>().ToTable("user_claim");
        builder.Entity<IdentityUserLogin<Guid>>().ToTable("user_login");
        builder.Entity<IdentityUserToken<Guid>>().ToTable("user_token");
        // The framework adds this table only where the host's options ask for it; ours is the same wherever the context is made.
        builder.Entity<IdentityUserPasskey<Guid>>(table =>
        {
            table.ToTable("user_passkey");
            table.HasKey(passkey => passkey.CredentialId);
            table.Property(passkey => passkey.CredentialId).HasMaxLength(1024);
            table.OwnsOne(passkey => passkey.Data).ToJson("data");
            table.HasOne<User>().WithMany().HasForeignKey(passkey => passkey.UserId);
        });
        builder.Entity<DataProtectionKey>().ToTable("data_protection_key");
        builder.ApplyConfigurationsFromAssembly(typeof(RiggingDb).Assembly);
    }
}

/// <summary>For dotnet-ef alone, which reads the model and reaches no server.</summary>
sealed class DesignTime : IDesignTimeDbContextFactory<RiggingDb>
{
    public RiggingDb CreateDbContext(string[] args) => RiggingDb.Open("Host=nowhere");
}
