using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Storage;
using Rigging.Storage.Database;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Seals;

namespace Rigging.Web.Commands;

/// <summary><c>verify</c>, <c>rebuild</c> and <c>seal</c>.</summary>
static class Audit
{
    public static Task<int> Verify(Options options)
    {
        var kept = options.Seal is { } file ? KeptSeal(file) : null;
        if (options.Words is [var bundle]) return Task.FromResult(Export.Verify(bundle, kept));
        return Run(options, async audit =>
        {
            var report = await audit.Verify(CancellationToken.None, kept);
            return (report.Summary, [.. report.Lines]);
        });
    }

    /// <summary>Seals everything up to now and prints the seal, or the last one when nothing was added since.</summary>
    public static async Task<int> Seal(Options options)
    {
        await using var database = await DatabaseAtHand.Open(options);
        await AppRole.Check(database.App);
        var databases = new OneDatabase(database.App);
        await new Sealer(databases, SystemClock.Instance).SealNow(CancellationToken.None);
        await using var db = databases.CreateDbContext();
        if (await db.Seals.OrderByDescending(seal => seal.Number).Select(seal => seal.Text).FirstOrDefaultAsync() is not { } text)
            throw new StartRefusedException("There is nothing to seal: no ledger has an entry.");
        Console.Write(text);
        return 0;
    }

    static Squawks.Ledgers.Seal KeptSeal(string file)
    {
        try
        {
            var (seal, fault) = Squawks.Ledgers.Seal.Read(File.ReadAllText(file));
            return seal ?? throw new StartRefusedException($"--seal {file}: is no seal that holds: {fault}.");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new StartRefusedException($"--seal {file}: cannot be read: {error.Message}");
        }
    }

    public static Task<int> Rebuild(Options options) => Run(options, async audit =>
    {
        var (written, faults) = await audit.Rebuild(CancellationToken.None);
        return ($"{written} projections written, {faults.Count} ledgers unreadable.", [.. faults.Select(fault => fault.ToString())]);
    });

    static async Task<int> Run(Options options, Func<LedgerAudit, Task<(string Summary, IReadOnlyList<string> Faults)>> act)
    {
        await using var database = await DatabaseAtHand.Open(options);
        await AppRole.Check(database.App);
        var (summary, faults) = await act(new(new OneDatabase(database.App)));
        foreach (var fault in faults)
            Console.WriteLine(fault);
        Console.WriteLine(summary);
        return faults.Count == 0 ? 0 : 1;
    }
}
