using Microsoft.AspNetCore.Identity;
using Rigging.Storage.School;
using Rigging.Web.Look;

namespace Rigging.Web.SignIn;

/// <summary>Refuses what would be guessed first. Length does the rest: no rule about digits or signs, no expiry.</summary>
public sealed class PlainPassword : IPasswordValidator<User>
{
    // Long enough for the length rule and on everybody's list; a program without a network cannot ask a list of leaked ones.
    static readonly string[] Known =
        ["password", "passwort", "qwertyuiop", "1234567890", "0987654321", "letmein", "iloveyou", "welcome", "changeme", "trustno1", "administrator", "rigging"];

    public Task<IdentityResult> ValidateAsync(UserManager<User> manager, User user, string? password)
    {
        List<IdentityError> wrong = [];
        var plain = (password ?? "").ToLowerInvariant();
        if (plain.Length > Doorman.MostOfPassword) wrong.Add(Error(Gaps.Fill(Say.MostCharacters, Doorman.MostOfPassword)));
        if (plain.Distinct().Count() < 5) wrong.Add(Error(Say.TooFewDifferent));
        if (user.Email?.Split('@')[0] is { Length: >= 4 } local && plain.Contains(local, StringComparison.OrdinalIgnoreCase)) wrong.Add(Error(Say.ContainsEMail));
        if (Known.Any(known => plain.StartsWith(known, StringComparison.Ordinal) && plain.Length < known.Length + 6)) wrong.Add(Error(Say.LittleMoreThan));
        if (password == Doorman.DemoPassword && !user.Demo) wrong.Add(Error(Say.PublishedInventedSchool));
        return Task.FromResult(wrong.Count == 0 ? IdentityResult.Success : IdentityResult.Failed([.. wrong]));
    }

    static IdentityError Error(string description) => new() { Code = "password-weak", Description = description };
}
