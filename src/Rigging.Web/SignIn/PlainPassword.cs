using Microsoft.AspNetCore.Identity;
using Rigging.Storage.School;
using Rigging.Web.Look;

namespace Rigging.Web.SignIn;

/// <summary>Refuses what would be guessed first. Length does the rest: no rule about digits or signs, no expiry.</summary>
public sealed class PlainPassword : IPasswordValidator<User>
{
    const int FewestOfItsOwn = 5;

    public Task<IdentityResult> ValidateAsync(UserManager<User> manager, User user, string? password)
    {
        List<IdentityError> wrong = [];
        var plain = password ?? "";
        if (plain.Length > Doorman.MostOfPassword) wrong.Add(Error(Gaps.Fill(Say.MostCharacters, Doorman.MostOfPassword)));
        else if (OfItsOwn(plain, user).Distinct().Count() < FewestOfItsOwn) wrong.Add(Error(Say.GuessedSoon));
        if (password == Doorman.DemoPassword && !user.Demo) wrong.Add(Error(Say.PublishedInventedSchool));
        return Task.FromResult(wrong.Count == 0 ? IdentityResult.Success : IdentityResult.Failed([.. wrong]));
    }

    /// <summary>What is left without a common password, this program's name and the person's address: what a guesser does not have already.</summary>
    static string OfItsOwn(string password, User user) =>
        ((string[])["rigging", .. (user.Email ?? "").Split('@', '.').Where(part => part.Length >= 4)])
        .Aggregate(CommonPasswords.Without(password), (left, word) => left.Replace(word, "", StringComparison.OrdinalIgnoreCase));

    static IdentityError Error(string description) => new() { Code = "password-weak", Description = description };
}
