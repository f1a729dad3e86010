using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Storage.School;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Security;
using Rigging.Web.SignIn;

namespace Rigging.Web.Report;

/// <summary>Lets somebody without an account report: a name, and the PIN that the school tells its pilots. It proves no identity, and the record says so.</summary>
public sealed class CockpitPin(IDbContextFactory<RiggingDb> databases, PinTries tries, Watch watch, Reach reach, IDataProtectionProvider protection)
{
    const string Cookie = "rigging-cockpit";
    const int LongestName = 80;
    static readonly TimeSpan Remembered = TimeSpan.FromDays(90);
    static readonly PasswordHasher<InstallationRow> Hasher = new();

    readonly ITimeLimitedDataProtector seal = protection.CreateProtector("cockpit").ToTimeLimitedDataProtector();

    sealed record Known(string Name, string Pin);

    /// <summary>Whether the school has set a PIN: without one only an account can report.</summary>
    public async Task<bool> IsSet(CancellationToken ct = default) => await Stored(ct) is not null;

    /// <summary>Who this phone was last time; null when the PIN is to be asked for.</summary>
    public async Task<string?> RememberedBy(HttpContext http, CancellationToken ct = default)
    {
        if (http.Request.Cookies[Cookie] is not { } cookie || await Stored(ct) is not { } stored) return null;
        try
        {
            return JsonSerializer.Deserialize<Known>(seal.Unprotect(cookie)) is { } known && known.Pin == Mark(stored) ? known.Name : null;
        }
        catch (CryptographicException)
        {
            return null;   // too old, or not ours
        }
    }

    /// <summary>The name as given, once the PIN is right; or what is wrong.</summary>
    public async Task<(string? Name, IReadOnlyList<BrokenRule> Wrong)> Admit(TypedFields typed, HttpContext http, CancellationToken ct)
    {
        if (await Stored(ct) is not { } stored)
            return (null, [new("no-pin", Say.ThisSchoolTakesReportsOnly)]);
        List<BrokenRule> wrong = [];
        var name = typed.Text("name");
        if (name is null) wrong.Add(new("value-missing", Say.YourNameNothingEntered, "name"));
        else if (name.Length > LongestName || name.Any(char.IsControl)) wrong.Add(new("text-too-long", Gaps.Fill(Say.YourNameWantedAtMost, LongestName), "name"));
        if (await RememberedBy(http, ct) is null && await WrongPin(stored, typed["pin"], http) is { } rule) wrong.Add(rule);
        typed["pin"] = null;
        if (wrong.Count > 0) return (null, wrong);
        http.Response.Cookies.Append(Cookie, seal.Protect(JsonSerializer.Serialize(new Known(name!, Mark(stored))), Remembered),
            new() { HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = http.Request.IsHttps, MaxAge = Remembered, IsEssential = true });
        return (name, []);
    }

    async Task<BrokenRule?> WrongPin(string stored, string? given, HttpContext http)
    {
        if (string.IsNullOrWhiteSpace(given)) return new("value-missing", Say.SchoolsPINNothingEntered, "pin");
        var from = Doorstep.Key(http.Connection.RemoteIpAddress);
        if (tries.Rests(from)) return new("too-many-tries", Gaps.Fill(Say.TooManyWrongPINs, PinTries.RestMinutes), "pin");
        if (Hasher.VerifyHashedPassword(null!, stored, given.Trim()) != PasswordVerificationResult.Failed) return null;
        tries.Failed(from);
        await watch.Note(SecurityEventKind.SignInFailed, null, "cockpit PIN");
        return new("wrong-pin", Say.ThatIsNotSchoolsPINMaintenance, "pin");
    }

    async Task<string?> Stored(CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        // The invented school's PIN is published: it counts on this machine only.
        return await db.Installations.AsNoTracking().Where(row => !row.Demo || reach.LoopbackOnly).Select(row => row.CockpitPinHash).SingleOrDefaultAsync(ct);
    }

    // A phone that knew an earlier PIN is asked again, and the cookie gives nothing of either away.
    static string Mark(string stored) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(stored)))[..16];
}

/// <summary>Counts wrong PINs on this host, by address and over all: a PIN is short, so guessing must be slow.</summary>
public sealed class PinTries(IClock clock)
{
    public const int RestMinutes = 15, MostFromOne = 5, MostFromAll = 60;

    readonly Lock turn = new();
    readonly List<(string From, Instant At)> failed = [];

    public bool Rests(string from)
    {
        lock (turn)
        {
            failed.RemoveAll(attempt => attempt.At < clock.GetCurrentInstant() - Duration.FromMinutes(RestMinutes));
            return failed.Count >= MostFromAll || failed.Count(attempt => attempt.From == from) >= MostFromOne;
        }
    }

    public void Failed(string from)
    {
        lock (turn) failed.Add((from, clock.GetCurrentInstant()));
    }
}
