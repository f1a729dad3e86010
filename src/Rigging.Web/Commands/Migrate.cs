using Npgsql;
using Rigging.Storage.Database;
using Rigging.Storage.Ledgers;

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
        // What is to be done next is stored as a sentence: this version may say it otherwise.
        foreach (var barred in await new LedgerAudit(new OneDatabase(database.App)).Reword(CancellationToken.None))
            Console.WriteLine(barred);
        Console.WriteLine("The database is up to date.");
        return 0;
    }
}
