using Npgsql;

namespace Rigging.Storage.Tests.Database;

/// <summary>No connection is opened here: it is what the pool was made with that counts.</summary>
public sealed class DatabaseSourcesTests
{
    [Theory]
    [InlineData("", DatabaseSources.MostConnections)]
    [InlineData(";Maximum Pool Size=7", 7)]
    [InlineData(";Maximum Pool Size=250", 250)]
    public async Task The_pool_leaves_room_on_the_server_unless_somebody_says_otherwise(string said, int most)
    {
        await using var sources = new DatabaseSources("Host=nowhere;Username=rigging_app;Database=rigging" + said);

        Assert.Equal(most, new NpgsqlConnectionStringBuilder(sources.Pool.ConnectionString).MaxPoolSize);
    }
}
