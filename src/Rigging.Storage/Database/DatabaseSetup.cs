using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Rigging.Storage.Database;

/// <summary>Brings a database up to this version: the database itself, two roles, the tables, who may touch what. Safe to repeat.</summary>
/// <remarks>
/// <see cref="Owner"/> owns every table and only ever migrates. <see cref="App"/> owns nothing, is no superuser, and may add
/// entries to ledgers but neither change nor remove them. Said plainly: the owner can do anything, rewriting a chain included.
/// </remarks>
public static class DatabaseSetup
{
    public const string Owner = "rigging_owner";
    public const string App = "rigging_app";

    /// <summary>The tables to which the application may add and nothing else.</summary>
    internal const string AppendOnly = "ledger_entry, seal, attachment, security_event";

    // Two hosts that start at once take turns.
    const long SetupLock = 0x5249_4747_494e_47;

    /// <param name="admin">Names the database to set up, and someone who may create roles: a superuser, or an owner with CREATEROLE.</param>
    /// <param name="appPassword">What the application signs in with; null leaves the password, or the trust, as it is.</param>
    /// <exception cref="StartRefusedException">The server cannot be reached, or does not let this user do it.</exception>
    public static async Task Prepare(string admin, string? appPassword = null, CancellationToken ct = default)
    {
        try
        {
            await CreateDatabase(admin, ct);
            await using var source = NpgsqlDataSource.Create(Unpooled(admin));
            await using var connection = await source.OpenConnectionAsync(ct);
            await Execute(connection, $"select pg_advisory_lock({SetupLock})", ct);
            await CreateRoles(connection, appPassword, ct);
            await using (var db = RiggingDb.Open(AsOwner(admin)))
                await db.Database.MigrateAsync(ct);
            await Grant(AsOwner(admin), ct);
        }
        catch (NpgsqlException error)
        {
            throw NotPrepared(admin, error);
        }
    }

    /// <summary>Whether the server has the application's role already: roles belong to a server, not to one database.</summary>
    public static async Task<bool> AppExists(string admin, CancellationToken ct = default)
    {
        try
        {
            await CreateDatabase(admin, ct);
            await using var connection = new NpgsqlConnection(Unpooled(admin));
            await connection.OpenAsync(ct);
            await using var ask = new NpgsqlCommand($"select exists (select from pg_roles where rolname = '{App}')", connection);
            return (bool)(await ask.ExecuteScalarAsync(ct))!;
        }
        catch (NpgsqlException error)
        {
            throw NotPrepared(admin, error);
        }
    }

    /// <summary>The same server and database, acting as the owner of the tables.</summary>
    public static string AsOwner(string admin) =>
        new NpgsqlConnectionStringBuilder(admin) { Options = $"-c role={Owner}", Pooling = false }.ConnectionString;

    static StartRefusedException NotPrepared(string admin, NpgsqlException error) =>
        new($"The database could not be prepared as '{new NpgsqlConnectionStringBuilder(admin).Username}': {error.Message}");

    static string Unpooled(string connection) => new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString;

    static async Task CreateDatabase(string admin, CancellationToken ct)
    {
        try
        {
            await using var there = new NpgsqlConnection(Unpooled(admin));
            await there.OpenAsync(ct);
        }
        catch (PostgresException missing) when (missing.SqlState == PostgresErrorCodes.InvalidCatalogName)
        {
            var name = new NpgsqlConnectionStringBuilder(admin).Database!;
            await using var server = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(Unpooled(admin)) { Database = "postgres" }.ConnectionString);
            await server.OpenAsync(ct);
            await Execute(server, $"create database {Quoted(name)} encoding 'UTF8' template template0", ct);
        }
    }

    static async Task CreateRoles(NpgsqlConnection connection, string? appPassword, CancellationToken ct)
    {
        await Execute(connection, $"""
            do $$ begin
                if not exists (select from pg_roles where rolname = '{Owner}') then
                    create role {Owner} nologin nosuperuser nocreatedb nocreaterole;
                end if;
                if not exists (select from pg_roles where rolname = '{App}') then
                    create role {App} login nosuperuser nocreatedb nocreaterole;
                end if;
                if not pg_has_role(current_user, '{Owner}', 'member') then
                    execute format('grant {Owner} to %I', current_user);
                end if;
            end $$;
            grant create, usage on schema public to {Owner};
            revoke create on schema public from public;
            grant usage on schema public to {App};
            """, ct);
        if (appPassword is not null)
            await Execute(connection, $"alter role {App} password {Literal(appPassword)}", ct);
    }

    static async Task Grant(string owner, CancellationToken ct)
    {
        await using var connection = new NpgsqlConnection(owner);
        await connection.OpenAsync(ct);
        await Execute(connection, $"""
            grant select, insert, update, delete on all tables in schema public to {App};
            grant usage on all sequences in schema public to {App};
            revoke all on {AppendOnly}, "__EFMigrationsHistory" from {App};
            grant select, insert on {AppendOnly} to {App};
            grant select on "__EFMigrationsHistory" to {App};
            """, ct);
    }

    static async Task Execute(NpgsqlConnection connection, string sql, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(ct);
    }

    static string Quoted(string name) => '"' + name.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';

    static string Literal(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
