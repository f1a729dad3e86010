using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Security;

/// <summary>Who flies reads names and what people act as; addresses and certificate numbers of others are for those who keep or sign records.</summary>
[Collection(InTheHangar.Name)]
public sealed class RegisterPrivacyTests(Hangar hangar)
{
    [Fact]
    public async Task A_pilot_reads_names_and_roles_of_others_and_the_rest_of_nobody_else()
    {
        using var pilot = await hangar.As(School.Pilot);

        var people = (await pilot.Open("/people")).Text;

        Assert.Contains(Hangar.NameOf(School.Mechanic), people, StringComparison.Ordinal);
        Assert.DoesNotContain(Hangar.EmailOf(School.Mechanic), people, StringComparison.Ordinal);
        Assert.DoesNotContain(Hangar.NumberOf(School.Certifier.Certificates[0]), people, StringComparison.Ordinal);
        Assert.Contains(Hangar.EmailOf(School.Pilot), people, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_inspector_reads_who_holds_which_certificate()
    {
        using var inspector = await hangar.As(School.Inspector);

        Assert.Contains(Hangar.NumberOf(School.Certifier.Certificates[0]), (await inspector.Open("/people")).Text, StringComparison.Ordinal);
    }
}
