using Microsoft.AspNetCore.Identity;
using Rigging.Storage.School;
using Rigging.Web.SignIn;

namespace Rigging.Web.Tests.SignIn;

/// <summary>What is tried first is refused, whatever its length (OWASP ASVS 5.0.0, 6.2.4 and 6.2.11); no rule asks for digits or signs (6.2.5).</summary>
public sealed class PlainPasswordTests
{
    // Long enough for the length rule; of each way people lengthen a common password.
    [Theory]
    [InlineData("password1234")]
    [InlineData("passwordpassword")]
    [InlineData("P@ssw0rd1234")]
    [InlineData("qwertyuiop[]")]
    [InlineData("123456789012")]
    [InlineData("aaaaaaaaaaaaaaaa")]
    [InlineData("abcabcabcabcabc")]
    [InlineData("iloveyou2026")]
    [InlineData("liverpool123")]
    [InlineData("sunshine1999")]
    [InlineData("hangar.mira12")]
    [InlineData("rigging2026!")]
    [InlineData(Doorman.DemoPassword)]
    public async Task What_is_tried_first_is_refused(string password) => Assert.False(await Accepted(password));

    [Theory]
    [InlineData("lantern gravel oboe thirty")]
    [InlineData("correcthorsebatterystaple!")]
    [InlineData("wkq vtz plo hgr")]
    [InlineData("ölige Hände am Mittwoch")]
    [InlineData("monkey and lantern")]
    public async Task What_is_hard_to_guess_is_accepted_without_digits_or_signs_being_asked_for(string password) => Assert.True(await Accepted(password));

    static async Task<bool> Accepted(string password) =>
        (await new PlainPassword().ValidateAsync(null!, new User { Email = "mira@hangar.example" }, password)) is IdentityResult { Succeeded: true };
}
