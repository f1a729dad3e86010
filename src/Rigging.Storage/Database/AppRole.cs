using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Rigging.Storage.Database;

/// <summary>What must hold before the application serves anybody.</summary>
public static class AppRole
{
    /// <exception cref="StartRefusedException">The database is behind or ahead of this version, or the connection may do too much.</exception>
    public static async Task Check(string connection, CancellationToken ct = default)
    {
        await using var db = RiggingDb.Open(connection);
        try
        {
            if (await Missing(db, ct) is { Count: > 0 } pending)
                throw new StartRefusedException($"The database lacks {pending.Count} migration(s), from '{pending[0]}' on. Run 'rigging migrate' first.");
            if (await Unknown(db, ct) is { } newer)
                throw new StartRefusedException($"The database was migrated by a newer version (it has '{newer}'). Run that version.");
            if (await Excess(db, ct) is { } excess)
                throw new StartRefusedException($"The connection's user '{new NpgsqlConnectionStringBuilder(connection).Username}' {excess}. "
                    + $"The application must connect as '{DatabaseSetup.App}', which may add ledger entries and never change them.");
        }
        catch (PostgresException error) when (error.SqlState == PostgresErrorCodes.InvalidAuthorizationSpecification)
        {
            throw new StartRefusedException($"The database does not admit us: {error.MessageText}. Run 'rigging migrate' first; it makes the roles.");
        }
        catch (NpgsqlException error)
        {
            throw new StartRefusedException($"The database cannot be reached: {error.Message}");
        }
    }

    static async Task<List<string>> Missing(RiggingDb db, CancellationToken ct)
    {
        try
        {
            return [.. await db.Database.GetPendingMigrationsAsync(ct)];
        }
        catch (PostgresException error) when (error.SqlState is PostgresErrorCodes.InvalidCatalogName or PostgresErrorCodes.InsufficientPrivilege)
        {
            return [.. db.Database.GetMigrations()];
        }
    }

    static async Task<string?> Unknown(RiggingDb db, CancellationToken ct) =>
        (await db.Database.GetAppliedMigrationsAsync(ct)).Except(db.Database.GetMigrations()).FirstOrDefault();

    static async Task<string?> Excess(RiggingDb db, CancellationToken ct) => await db.Database.SqlQuery<string>($"""
        select case
            when (select rolsuper from pg_roles where rolname = current_user) then 'is a superuser'
            when pg_has_role(current_user, (select relowner from pg_class where oid = 'ledger_entry'::regclass), 'member') then 'owns the ledgers'
            when has_table_privilege('ledger_entry', 'update, delete, truncate, trigger') then 'may change ledger entries'
            when has_table_privilege('seal', 'update, delete, truncate, trigger') then 'may change seals'
            when has_table_privilege('attachment', 'update, delete, truncate, trigger') then 'may change attachments'
            when has_table_privilege('security_event', 'update, delete, truncate, trigger') then 'may change security events'
            else '' end as "Value"
        """).SingleAsync(ct) is { Length: > 0 } excess ? excess : null;
}
