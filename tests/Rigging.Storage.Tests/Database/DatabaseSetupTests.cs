using Microsoft.EntityFrameworkCore;
using Rigging.Storage.Database;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Storage.Tests.Database;

public sealed class DatabaseSetupTests(Postgres postgres)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public void The_migrations_say_what_the_model_says()
    {
        using var db = RiggingDb.Open("Host=nowhere");

        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task Setting_up_makes_the_database_and_can_be_repeated() => await InNewDatabase(async name =>
    {
        await DatabaseSetup.Prepare(postgres.AdminOf(name), ct: Ct);
        await DatabaseSetup.Prepare(postgres.AdminOf(name), ct: Ct);

        await AppRole.Check(postgres.App(name), Ct);
    });

    [Fact]
    public async Task Migrations_can_be_taken_back_to_nothing() => await InNewDatabase(async name =>
    {
        await DatabaseSetup.Prepare(postgres.AdminOf(name), ct: Ct);
        await using var db = RiggingDb.Open(DatabaseSetup.AsOwner(postgres.AdminOf(name)));

        await db.Database.MigrateAsync("0", Ct);

        Assert.Equal("__EFMigrationsHistory", await Postgres.Ask(postgres.AdminOf(name),
            "select string_agg(relname, ',') from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'"));
    });

    public static TheoryData<string> Schemas
    {
        get
        {
            using var db = RiggingDb.Open("Host=nowhere");
            return [.. db.Database.GetMigrations()];
        }
    }

    /// <summary>The schema that a school may have, with its ledgers in it, and then this program's.</summary>
    [Theory, MemberData(nameof(Schemas))]
    public async Task A_ledger_that_lies_in_an_earlier_schema_is_whole_in_this_one(string schema)
    {
        var school = new SchoolHouse(postgres);
        await school.InitializeAsync();
        try
        {
            await school.Walk();
            var before = await School(school);
            await using (var db = RiggingDb.Open(DatabaseSetup.AsOwner(school.Database.Admin))) await db.Database.MigrateAsync(schema, Ct);

            await DatabaseSetup.Prepare(school.Database.Admin, ct: Ct);

            Assert.Equal(before, await School(school));
            var report = await school.Audit.Verify(Ct);
            Assert.True(report.Holds, string.Join('\n', report.Lines));
        }
        finally
        {
            await school.DisposeAsync();
        }
    }

    static async Task<string> School(SchoolHouse school)
    {
        await using var db = school.CreateDbContext();
        var squawk = await db.Squawks.SingleAsync(Ct);
        var ledger = (await school.Ledgers.Load(squawk.Id, Ct))!;
        return $"{ledger.Length} entries, {ledger.State.Stage}, {Convert.ToHexString(squawk.HeadHash)}";
    }

    [Fact]
    public async Task Two_hosts_may_set_up_at_once() => await InNewDatabase(async name =>
    {
        await Postgres.Execute(postgres.AdminOf("postgres"), $"create database {name}");

        await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => DatabaseSetup.Prepare(postgres.AdminOf(name), ct: Ct)));

        await AppRole.Check(postgres.App(name), Ct);
    });

    [Fact]
    public async Task A_database_that_lacks_migrations_is_refused() => await InNewDatabase(async name =>
    {
        await Postgres.Execute(postgres.AdminOf("postgres"), $"create database {name}");

        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => AppRole.Check(postgres.App(name), Ct));

        Assert.Contains("Run 'rigging migrate' first", refused.Message, StringComparison.Ordinal);
    });

    [Fact]
    public async Task A_database_of_a_newer_version_is_refused() => await InNewDatabase(async name =>
    {
        await DatabaseSetup.Prepare(postgres.AdminOf(name), ct: Ct);
        await Postgres.Execute(postgres.AdminOf(name), "insert into \"__EFMigrationsHistory\" values ('29991231000000_Later', '99.0.0')");

        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => AppRole.Check(postgres.App(name), Ct));

        Assert.Contains("newer version (it has '29991231000000_Later')", refused.Message, StringComparison.Ordinal);
    });

    [Fact]
    public async Task A_superuser_the_owner_and_whoever_may_change_entries_are_refused_as_the_application() => await InNewDatabase(async name =>
    {
        await DatabaseSetup.Prepare(postgres.AdminOf(name), ct: Ct);

        var superuser = await Assert.ThrowsAsync<StartRefusedException>(() => AppRole.Check(postgres.AdminOf(name), Ct));
        var owner = await Assert.ThrowsAsync<StartRefusedException>(() => AppRole.Check(DatabaseSetup.AsOwner(postgres.AdminOf(name)), Ct));
        await Postgres.Execute(postgres.AdminOf(name), "grant update on ledger_entry to rigging_app");
        var mayUpdate = await Assert.ThrowsAsync<StartRefusedException>(() => AppRole.Check(postgres.App(name), Ct));

        Assert.Contains("is a superuser", superuser.Message, StringComparison.Ordinal);
        Assert.Contains("owns the ledgers", owner.Message, StringComparison.Ordinal);
        Assert.Contains("may change ledger entries", mayUpdate.Message, StringComparison.Ordinal);
    });

    [Fact]
    public async Task A_server_that_is_not_there_is_said_in_one_sentence()
    {
        var refused = await Assert.ThrowsAsync<StartRefusedException>(() => DatabaseSetup.Prepare("Host=/nowhere;Username=me;Database=rigging", ct: Ct));

        Assert.StartsWith("The database could not be prepared as 'me': ", refused.Message, StringComparison.Ordinal);
    }

    async Task InNewDatabase(Func<string, Task> test)
    {
        var name = "rigging_test_" + Guid.NewGuid().ToString("N")[..12];
        try
        {
            await test(name);
        }
        finally
        {
            await Postgres.Execute(postgres.AdminOf("postgres"), $"drop database if exists {name} with (force)");
        }
    }
}
