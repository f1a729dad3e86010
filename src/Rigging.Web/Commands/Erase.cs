using System.Globalization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Storage;
using Rigging.Storage.Database;
using Rigging.Storage.Doors;
using Rigging.Web.Office;

namespace Rigging.Web.Commands;

/// <summary><c>erase P-N</c>: what the office does on a person's page, by the same rules.</summary>
static class Erase
{
    public static async Task<int> Run(Options options)
    {
        var number = NumberIn(options.Words);
        await using var database = await DatabaseAtHand.Open(options);
        await AppRole.Check(database.App);
        var databases = new OneDatabase(database.App);
        await using var db = databases.CreateDbContext();
        if (await db.People.Include(row => row.Certificates).SingleOrDefaultAsync(row => row.Number == number) is not { } person)
            throw new StartRefusedException($"P-{number}: nobody of that number is in the register.");
        Console.WriteLine($"P-{number} is {person.Name}. This takes name, contacts, certificate numbers, account and sessions out of the register for good; entries and signatures stand.");
        Console.Write("Type the name to go on: ");
        var typed = await Console.In.ReadLineAsync();
        if (await Accounts.Erase(db, person, typed, SystemClock.Instance.GetCurrentInstant(), CancellationToken.None) is [var wrong, ..])
            throw new StartRefusedException($"P-{number}: {wrong.Sentence}");
        await new SecurityBook(databases, SystemClock.Instance).Note(SecurityEventKind.PersonErased, person.Id, null, null, "by the erase command");
        Console.WriteLine($"P-{number} is erased.");
        return 0;
    }

    static int NumberIn(IReadOnlyList<string> words) =>
        words is [var word] && int.TryParse(word.StartsWith("P-", StringComparison.OrdinalIgnoreCase) ? word[2..] : word, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number : throw new StartRefusedException($"erase {string.Join(' ', words)}: wanted: erase P-N, the person's number as on the people page.");
}
