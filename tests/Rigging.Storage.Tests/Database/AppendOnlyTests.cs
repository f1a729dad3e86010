using Npgsql;
using Rigging.Storage.Database;
using Rigging.Storage.Seals;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Storage.Tests.Database;

/// <summary>The database itself keeps the application from changing entries, whatever a bug or an intruder in it tries.</summary>
public sealed class AppendOnlyTests(AppendOnlyTests.OneLedger fixture) : IClassFixture<AppendOnlyTests.OneLedger>
{
    readonly SchoolHouse school = fixture.School;

    /// <summary>Shared: every test shows that it changed nothing.</summary>
    public sealed class OneLedger(Postgres postgres) : IAsyncLifetime
    {
        public SchoolHouse School { get; } = new(postgres);

        public async ValueTask InitializeAsync()
        {
            await School.InitializeAsync();
            await School.Walk((School.Mechanic, SchoolHouse.Call));
            await new Sealer(School, School.Clock).SealNow(CancellationToken.None);
            await Postgres.Execute(School.Database.App, "insert into security_event (at, kind, about) values (now(), 'signed-in', '')");
            await Postgres.Execute(School.Database.App, "insert into attachment (sha256, media_type, bytes) values (sha256('picture'), 'image/png', 'picture')");
        }

        public ValueTask DisposeAsync() => School.DisposeAsync();
    }

    [Theory]
    [InlineData("update ledger_entry set payload = payload")]
    [InlineData("update ledger_entry set recorded_at = now()")]
    [InlineData("delete from ledger_entry")]
    [InlineData("truncate ledger_entry")]
    [InlineData("drop table ledger_entry")]
    [InlineData("alter table ledger_entry drop column hash")]
    [InlineData("alter table ledger_entry disable trigger all")]
    [InlineData("alter table ledger_entry disable trigger ledger_entry_append_only")]
    [InlineData("drop trigger ledger_entry_append_only on ledger_entry")]
    [InlineData("create or replace function ledger_entry_append_only() returns trigger language plpgsql as 'begin return old; end'")]
    [InlineData("create trigger mine before insert on ledger_entry for each row execute function ledger_entry_append_only()")]
    [InlineData("create rule mine as on insert to ledger_entry do instead nothing")]
    [InlineData("create table public.ledger_entry_2 (like ledger_entry)")]
    [InlineData("set session_replication_role = replica")]
    [InlineData("set role rigging_owner")]
    [InlineData("grant update on ledger_entry to rigging_app; update ledger_entry set kind = kind")]
    [InlineData("alter role rigging_app superuser")]
    [InlineData("insert into ledger_entry select squawk_id, sequence, kind, version, payload, previous_hash, hash from ledger_entry on conflict (squawk_id, sequence) do update set kind = 'changed'")]
    [InlineData("delete from \"__EFMigrationsHistory\"")]
    [InlineData("update seal set text = text")]
    [InlineData("delete from seal")]
    [InlineData("truncate seal")]
    [InlineData("alter table seal disable trigger all")]
    [InlineData("drop trigger seal_append_only on seal")]
    [InlineData("insert into seal select * from seal on conflict (number) do update set text = 'changed'")]
    [InlineData("update attachment set media_type = media_type")]
    [InlineData("delete from attachment")]
    [InlineData("truncate attachment")]
    [InlineData("alter table attachment drop column bytes")]
    [InlineData("insert into attachment select * from attachment on conflict (sha256) do update set media_type = 'text/html'")]
    [InlineData("create or replace function append_only() returns trigger language plpgsql as 'begin return old; end'")]
    [InlineData("update security_event set kind = kind")]
    [InlineData("delete from security_event")]
    [InlineData("truncate security_event")]
    [InlineData("drop trigger security_event_append_only on security_event")]
    public async Task The_application_may_not(string sql)
    {
        var before = await Fingerprint();

        var refused = await Assert.ThrowsAsync<PostgresException>(() => Postgres.Execute(school.Database.App, sql));

        // 42501: insufficient privilege.
        Assert.Equal("42501", refused.SqlState);
        Assert.Equal(before, await Fingerprint());
    }

    [Theory]
    [InlineData("update ledger_entry set kind = kind")]
    [InlineData("delete from ledger_entry")]
    [InlineData("truncate ledger_entry")]
    [InlineData("update seal set text = text")]
    [InlineData("delete from seal")]
    [InlineData("update attachment set bytes = bytes")]
    [InlineData("truncate attachment")]
    [InlineData("delete from security_event")]
    public async Task Even_the_owner_does_not_do_it_by_a_slip_of_the_hand(string sql)
    {
        var before = await Fingerprint();

        await Assert.ThrowsAsync<PostgresException>(() => Postgres.Execute(school.Database.Owner, sql));

        Assert.Equal(before, await Fingerprint());
    }

    [Fact]
    public async Task The_application_owns_nothing_and_is_no_superuser()
    {
        Assert.Equal(0L, await Postgres.Ask(school.Database.App, "select count(*) from pg_class join pg_roles r on r.oid = relowner where rolname = current_user"));
        Assert.Equal(false, await Postgres.Ask(school.Database.App,
            "select rolsuper or rolcreaterole or rolcreatedb or rolbypassrls or rolreplication from pg_roles where rolname = current_user"));
        Assert.Equal(false, await Postgres.Ask(school.Database.App, $"select pg_has_role('{DatabaseSetup.Owner}', 'member')"));
    }

    [Fact]
    public async Task The_owner_is_no_superuser_and_cannot_sign_in() =>
        Assert.Equal(false, await Postgres.Ask(school.Database.App, $"select rolsuper or rolcanlogin from pg_roles where rolname = '{DatabaseSetup.Owner}'"));

    [Fact]
    public async Task A_picture_is_stored_under_its_own_hash_or_not_at_all()
    {
        var refused = await Assert.ThrowsAsync<PostgresException>(() => Postgres.Execute(school.Database.App,
            "insert into attachment (sha256, media_type, bytes) values (sha256('one'), 'image/png', 'another')"));
        Assert.Equal("ck_attachment_sha256", refused.ConstraintName);
    }

    async Task<object?> Fingerprint() => await Postgres.Ask(school.Database.Admin, """
        select (select string_agg(md5(e::text), ',' order by squawk_id, sequence) from ledger_entry e)
            || (select string_agg(md5(s::text), ',' order by number) from seal s) || (select string_agg(md5(a::text), ',' order by sha256) from attachment a)
            || (select string_agg(md5(happened::text), ',' order by id) from security_event happened)
        """);
}
