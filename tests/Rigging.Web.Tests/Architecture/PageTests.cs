using System.Reflection;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace Rigging.Web.Tests.Architecture;

public class PageTests
{
    const string Persistence = @"^(Microsoft\.EntityFrameworkCore|Npgsql|Rigging\.Storage\.RiggingDb|Rigging\.Storage\..*Row$)";

    static readonly Type[] Pages = [.. typeof(Program).Assembly.GetTypes().Where(type => type.GetCustomAttributes<RouteAttribute>().Any())];

    [Fact]
    public void Every_page_says_who_may_open_it()
    {
        Assert.NotEmpty(Pages);
        Assert.DoesNotContain(Pages, page => page.GetCustomAttribute<AuthorizeAttribute>() is null && page.GetCustomAttribute<AllowAnonymousAttribute>() is null);
    }

    [Fact]
    public void Only_these_pages_are_open_to_anybody()
    {
        string[] open = ["CockpitPage", "InvitationPage", "NotFoundPage", "ReceiptPage", "SetUpPage", "SignInPage"];
        Assert.Equal([], Pages.Where(page => page.GetCustomAttribute<AllowAnonymousAttribute>() is not null).Select(page => page.Name).Except(open));
    }

    static bool ComponentsUseNoDatabase(string space) => House.Holds(
        Types().That().AreAssignableTo(typeof(ComponentBase)).And().ResideInNamespaceMatching(space)
            .Should().NotDependOnAny(Types(includeReferenced: true).That().HaveFullNameMatching(Persistence)));

    [Fact]
    public void No_component_touches_the_database() => Assert.True(ComponentsUseNoDatabase(@"^Rigging\.Web(\.|$)"));

    [Fact]
    public void That_rule_bites() => Assert.False(ComponentsUseNoDatabase(@"^Planted\.PageWithADatabase$"));

    [Fact]
    public void A_page_without_a_word_about_access_would_be_caught() =>
        Assert.Null(typeof(Planted.PageWithADatabase.Plant).GetCustomAttribute<AuthorizeAttribute>());

    static readonly string[] AllSteps = ["Report", "AirworthinessCall", "Checks", "Assessment", "Work", "Inspection", "CheckFlight", "SignOff", "SideSteps", "Office"];

    public static TheoryData<string> Steps => ["SignOff", "Report", "Checks", "Assessment"];

    /// <summary>One step's folder does not reach into another's: they meet in the domain, on the desk, or through a link.</summary>
    [Theory, MemberData(nameof(Steps))]
    public void Steps_do_not_reach_into_each_other(string step)
    {
        var others = string.Join('|', AllSteps.Where(other => other != step));
        Assert.True(House.HasTypesIn($@"^Rigging\.Web\.{step}(\.|$)"), $"No type in {step}: the rule would hold for nothing.");
        Assert.True(House.Holds(House.Uses($@"^Rigging\.Web\.{step}(\.|$)", $@"^Rigging\.Web\.({others})\.")));
    }

    [Fact]
    public void A_step_that_reached_into_another_would_be_caught() =>
        Assert.False(House.Holds(House.Uses(@"^Planted\.ReachesIntoAStep$", @"^Rigging\.Web\.(SignOff|SignIn)\.")));
}
