using Microsoft.AspNetCore.Identity;
using Rigging.Storage.School;

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
        if (plain.Length > Doorman.MostOfPassword) wrong.Add(Error($"At most {Doorman.MostOfPassword} characters."));
        if (plain.Distinct().Count() < 5) wrong.Add(Error("Too few different characters."));
        if (user.Email?.Split('@')[0] is { Length: >= 4 } local && plain.Contains(local, StringComparison.OrdinalIgnoreCase)) wrong.Add(Error("It contains the e-mail address."));
        if (Known.Any(known => plain.StartsWith(known, StringComparison.Ordinal) && plain.Length < known.Length + 6)) wrong.Add(Error("It is little more than a word that is tried first."));
        if (password == Doorman.DemoPassword && !user.Demo) wrong.Add(Error("It is published with the invented school."));
        return Task.FromResult(wrong.Count == 0 ? IdentityResult.Success : IdentityResult.Failed([.. wrong]));
    }

    static IdentityError Error(string description) => new() { Code = "password-weak", Description = description };
}
