using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.School;
using Rigging.Web.Desk;

namespace Rigging.Web.Office;

/// <summary>The code printed on the console of a program that has no school yet: whoever can read it may set the school up. Made anew at every start.</summary>
public sealed class SetUpCode
{
    public string Value { get; } = RandomNumberGenerator.GetString("23456789ABCDEFGHJKLMNPQRSTUVWXYZ", 12);

    public bool Is(string? typed) => CryptographicOperations.FixedTimeEquals(
        Encoding.UTF8.GetBytes((typed ?? "").Trim().ToUpperInvariant()), Encoding.UTF8.GetBytes(Value));
}

/// <summary>Makes a school of an empty database: once.</summary>
public sealed class SetUp(IDbContextFactory<RiggingDb> databases, UserManager<User> users, SetUpCode code, SchoolSign sign, IClock clock)
{
    public async Task<bool> IsNeeded(CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        return !await db.Installations.AnyAsync(ct);
    }

    public async Task<IReadOnlyList<BrokenRule>> Run(string? typedCode, string schoolName, string timeZone, string ruleSet, NewPerson first, CancellationToken ct = default)
    {
        if (!code.Is(typedCode)) return [new("code-wrong", Say.ThatIsNotCodeProgramPrinted, "code")];
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.Installations.AnyAsync(ct)) return [new("set-up-already", Say.ThisSchoolIsSetUpAlready)];
        var (_, wrong) = await (first with { Authorities = [Authority.Office] }).Enter(db, users, ct);
        if (wrong.Count > 0) return wrong;
        // Last, so that a set-up that was cut off can be done again under another address. A second one has nowhere to go: the table holds one row.
        db.Installations.Add(new() { SchoolName = schoolName, TimeZone = timeZone, RuleSet = ruleSet, Created = clock.GetCurrentInstant() });
        await db.SaveChangesAsync(ct);
        await sign.Read(ct);
        return [];
    }
}
