using Npgsql;
using Rigging.Storage.Database;

namespace Rigging.Web.Commands;

static class Migrate
{
    public static async Task<int> Run(Options options)
    {
        await using var database = await DatabaseAtHand.Open(options);
        // The application's own role cannot migrate; it can see whether there is anything to do.
        if (new NpgsqlConnectionStringBuilder(database.Admin).Username == DatabaseSetup.App)
            await AppRole.Check(database.App);
        else
            await DatabaseSetup.Prepare(database.Admin, database.AppPassword);
        Console.WriteLine("The database is up to date.");
        return 0;
    }
}
