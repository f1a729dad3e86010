using Npgsql;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;
using Testcontainers.PostgreSql;

[assembly: AssemblyFixture(typeof(Rigging.Storage.Tests.Postgres))]

namespace Rigging.Storage.Tests;

/// <summary>
/// One real server for all tests: the one named by RIGGING_TEST_PG (a superuser's connection string), else a throw-away
/// private cluster, else a container. None of them: every test that needs one fails and says so.
/// </summary>
public sealed class Postgres : IAsyncLifetime
{
    const string Image = "postgres:17-alpine";
    const string Template = "rigging_template";

    readonly SemaphoreSlim copying = new(1, 1);
    PrivateCluster? cluster;
    PostgreSqlContainer? container;
    string admin = "";

    public async ValueTask InitializeAsync()
    {
        if (Environment.GetEnvironmentVariable("RIGGING_TEST_PG") is { Length: > 0 } given)
        {
            admin = given;
        }
        else if (PostgresBinaries.Find() is not null)
        {
            cluster = await PrivateCluster.StartThrowAway();
            admin = cluster.AdminConnection;
        }
        else
        {
            container = new PostgreSqlBuilder(Image).Build();
            await container.StartAsync();
            admin = container.GetConnectionString();
        }
        await Execute(AdminOf("postgres"), $"drop database if exists {Template}");
        await DatabaseSetup.Prepare(AdminOf(Template), "app-password-for-tests");
    }

    /// <summary>A fresh database with all migrations; the superuser's connection to it.</summary>
    public async Task<TestDatabase> Create()
    {
        var name = "rigging_test_" + Guid.NewGuid().ToString("N")[..12];
        // A template is copied by one at a time.
        await copying.WaitAsync();
        try
        {
            await Execute(AdminOf("postgres"), $"create database {name} template {Template}");
        }
        finally
        {
            copying.Release();
        }
        return new(AdminOf(name), App(name));
    }

    /// <summary>The superuser's connection to a database that may not exist yet.</summary>
    public string AdminOf(string database) =>
        new NpgsqlConnectionStringBuilder(admin) { Database = database, Pooling = false }.ConnectionString;

    public string App(string database) => new NpgsqlConnectionStringBuilder(admin)
    {
        Database = database,
        Username = DatabaseSetup.App,
        Password = "app-password-for-tests",
        // The admin's connection is unpooled, and a new one costs 40 ms. Idle ones go soon: many databases share this server.
        Pooling = true,
        MaxPoolSize = 8,
        ConnectionIdleLifetime = 5,
        ConnectionPruningInterval = 2,
    }.ConnectionString;

    public static async Task Execute(string connection, string sql)
    {
        await using var opened = new NpgsqlConnection(connection);
        await opened.OpenAsync();
        await using var command = new NpgsqlCommand(sql, opened);
        await command.ExecuteNonQueryAsync();
    }

    public static async Task<object?> Ask(string connection, string sql)
    {
        await using var opened = new NpgsqlConnection(connection);
        await opened.OpenAsync();
        await using var command = new NpgsqlCommand(sql, opened);
        return await command.ExecuteScalarAsync();
    }

    public async ValueTask DisposeAsync()
    {
        NpgsqlConnection.ClearAllPools();
        copying.Dispose();
        if (cluster is not null)
            await cluster.DisposeAsync();
        if (container is not null)
            await container.DisposeAsync();
    }
}

/// <param name="Admin">Connects as a superuser.</param>
/// <param name="App">Connects as the application does.</param>
public sealed record TestDatabase(string Admin, string App)
{
    public string Owner => DatabaseSetup.AsOwner(Admin);

    public async ValueTask Drop()
    {
        NpgsqlConnection.ClearAllPools();
        var name = new NpgsqlConnectionStringBuilder(Admin).Database;
        await Postgres.Execute(new NpgsqlConnectionStringBuilder(Admin) { Database = "postgres" }.ConnectionString, $"drop database {name} with (force)");
    }
}
