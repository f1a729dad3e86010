using Rigging.Storage.Database;
using Rigging.Storage.Ledgers;

namespace Rigging.Web.Commands;

/// <summary><c>verify</c> and <c>rebuild</c>.</summary>
static class Audit
{
    public static Task<int> Verify(Options options) => Run(options, async audit =>
    {
        var (ledgers, faults) = await audit.Verify(CancellationToken.None);
        return ($"{ledgers} ledgers, {faults.Count} broken.", faults);
    });

    public static Task<int> Rebuild(Options options) => Run(options, async audit =>
    {
        var (written, faults) = await audit.Rebuild(CancellationToken.None);
        return ($"{written} projections written, {faults.Count} ledgers unreadable.", faults);
    });

    static async Task<int> Run(Options options, Func<LedgerAudit, Task<(string Summary, IReadOnlyList<LedgerFault> Faults)>> act)
    {
        await using var database = await DatabaseAtHand.Open(options);
        await AppRole.Check(database.App);
        var (summary, faults) = await act(new(new OneDatabase(database.App)));
        foreach (var fault in faults)
            Console.WriteLine(fault);
        Console.WriteLine(summary);
        return faults.Count == 0 ? 0 : 1;
    }

    sealed class OneDatabase(string connection) : Microsoft.EntityFrameworkCore.IDbContextFactory<Storage.RiggingDb>
    {
        public Storage.RiggingDb CreateDbContext() => Storage.RiggingDb.Open(connection);
    }
}
