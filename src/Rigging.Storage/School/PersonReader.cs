using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Storage.School;

/// <summary>A person as the rules know them, from the register.</summary>
public static class PersonReader
{
    /// <summary>Null when the person is not in the register.</summary>
    public static async Task<Person?> Read(RiggingDb db, PersonId who, CancellationToken ct) =>
        await db.People.AsNoTracking()
            .Include(row => row.Authorities)
            .Include(row => row.Certificates.OrderBy(certificate => certificate.Id))
            .SingleOrDefaultAsync(row => row.Id == who, ct) is { } row
            ? new(row.Id,
                [.. row.Authorities.Select(held => held.Authority).Order()],
                [.. row.Certificates.Select(held => new Certificate(held.Id, held.Kind, held.ValidUntil, held.RecentUntil))],
                row.GuestOf is { } squawk ? new(squawk, row.GuestUntil ?? Instant.MinValue) : null,
                row.LeftAt is not null)
            : null;
}
