using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Storage;
using Rigging.Storage.School;

namespace Rigging.Web.Desk;

/// <summary>The small reads that many pages share.</summary>
static class Registers
{
    public static async Task<Register> Names(RiggingDb db, CancellationToken ct) => new(
        await db.People.AsNoTracking().ToDictionaryAsync(person => person.Id, person => person.Name, ct),
        await db.Set<CertificateRow>().AsNoTracking().ToDictionaryAsync(certificate => certificate.Id, certificate => certificate.Number, ct),
        await db.NameChanges.AsNoTracking().OrderBy(change => change.At).ThenBy(change => change.Id).Select(change => new EarlierName(change.PersonId, change.FromName, change.At)).ToListAsync(ct));

    public static async Task<SchoolOnFile> School(RiggingDb db, CancellationToken ct)
    {
        var row = await db.Installations.AsNoTracking().SingleAsync(ct);
        return new(row.SchoolName, DateTimeZoneProviders.Tzdb[row.TimeZone], row.RuleSet, row.PasskeysOnly);
    }
}
