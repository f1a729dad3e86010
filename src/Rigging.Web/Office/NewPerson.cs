using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.School;
using Rigging.Web.Look;

namespace Rigging.Web.Office;

/// <summary>Somebody to be entered in the register, with the account to sign in with.</summary>
/// <param name="Password">Null for whoever is invited: they choose it themselves, and nobody else ever knows it.</param>
/// <param name="Visit">A guest's squawk and the end of the visit; null for the school's own people.</param>
public sealed record NewPerson(string Name, string Email, string? Password, IReadOnlyList<Authority> Authorities, CertificateLine? Certificate, Visit? Visit = null)
{
    /// <summary>Register and account together, or neither.</summary>
    internal async Task<(PersonId? Id, IReadOnlyList<BrokenRule> Wrong)> Enter(RiggingDb db, UserManager<User> users, CancellationToken ct)
    {
        if (await users.FindByNameAsync(Email) is not null)
            return (null, [new("email-taken", Gaps.Fill(Say.SomebodyElseSignsInAs, Email), "email")]);
        var row = new PersonRow
        {
            Number = (await db.People.MaxAsync(p => (int?)p.Number, ct) ?? 0) + 1,
            Name = Name,
            Email = Email,
            GuestOf = Visit?.Squawk,
            GuestUntil = Visit?.Until,
        };
        row.Authorities.AddRange(Authorities.Select(authority => new PersonAuthorityRow { Authority = authority }));
        if (Certificate is { } certificate) row.Certificates.Add(certificate.ToRow());
        var account = new User { UserName = Email, Email = Email, PersonId = row.Id };
        List<BrokenRule> weak = [];
        foreach (var validator in Password is null ? [] : users.PasswordValidators)
            weak.AddRange((await validator.ValidateAsync(users, account, Password)).Errors.Select(error => new BrokenRule("password-weak", error.Description, "password")));
        if (weak.Count > 0) return (null, weak);
        db.People.Add(row);
        await db.SaveChangesAsync(ct);
        var made = await (Password is null ? users.CreateAsync(account) : users.CreateAsync(account, Password));
        if (made.Succeeded) return (row.Id, []);
        db.People.Remove(row);
        await db.SaveChangesAsync(ct);
        return (null, [.. made.Errors.Select(error => new BrokenRule("account-refused", error.Description, "email"))]);
    }
}
