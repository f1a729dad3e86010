using System.Globalization;
using NodaTime;
using Rigging.Storage;
using Rigging.Storage.Database;
using Rigging.Storage.Ledgers;
using Rigging.Web.Records;

namespace Rigging.Web.Commands;

/// <summary><c>export</c>, and <c>verify FILE</c>, which is its counterpart.</summary>
static class Export
{
    public static async Task<int> Run(Options options)
    {
        var (scope, file) = ScopeIn(options.Words);
        if (File.Exists(file)) throw new StartRefusedException($"{file}: exists already; wanted: a new file.");
        await using var database = await DatabaseAtHand.Open(options);
        await AppRole.Check(database.App);
        var databases = new OneDatabase(database.App);
        var maker = new BundleMaker(databases, new LedgerStore(databases, SystemClock.Instance), SystemClock.Instance);
        // Whole or not there.
        var unfinished = file + ".new";
        int? count;
        await using (var into = File.Create(unfinished))
            count = await maker.Make(scope, into);
        if (count is null)
        {
            File.Delete(unfinished);
            throw new StartRefusedException($"{scope.Words}: this school has none of that name.");
        }
        File.Move(unfinished, file);
        await using var made = File.OpenRead(file);
        Console.WriteLine($"{file}: {scope.Words}, {count} ledgers, SHA-256 {Convert.ToHexStringLower(await System.Security.Cryptography.SHA256.HashDataAsync(made))}");
        return 0;
    }

    public static int Verify(string file, Squawks.Ledgers.Seal? kept)
    {
        try
        {
            using var bundle = File.OpenRead(file);
            var report = BundleCheck.Verify(bundle, kept);
            foreach (var fault in report.Faults) Console.WriteLine(fault);
            Console.WriteLine(report.Summary);
            return report.Faults.Count == 0 ? 0 : 1;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new StartRefusedException($"{file}: cannot be read: {error.Message}");
        }
    }

    static (BundleScope, string) ScopeIn(IReadOnlyList<string> words) => words switch
    {
        ["squawk", var number, var file] when int.TryParse(number.StartsWith("S-", StringComparison.Ordinal) ? number[2..] : number, NumberStyles.None, CultureInfo.InvariantCulture, out var squawk)
            => (new BundleScope.Squawk(squawk), file),
        ["aircraft", var registration, var file] => (new BundleScope.Aircraft(registration), file),
        ["all", var file] => (new BundleScope.Everything(), file),
        _ => throw new StartRefusedException($"export {string.Join(' ', words)}: wanted: export squawk N FILE, export aircraft REGISTRATION FILE, or export all FILE."),
    };
}
