using MudBlazor.Services;
using NodaTime;
using Rigging.Web.Api;
using Rigging.Web.Demo;
using Rigging.Web.Desk;
using Rigging.Web.Fleet;
using Rigging.Web.FlightCard;
using Rigging.Web.Notices;
using Rigging.Web.Office;
using Rigging.Web.Records;
using Rigging.Web.Report;
using Rigging.Web.Security;
using Rigging.Web.SignIn;
using Rigging.Web.SignOff;
using Rigging.Web.Work;

namespace Rigging.Web;

/// <summary>What the site is made of: its parts, and the order in which a request meets them.</summary>
static class Site
{
    public static void AddParts(IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddMudServices();
        services.AddHttpContextAccessor();
        services.AddAntiforgery(antiforgery =>
        {
            antiforgery.Cookie.Name = "rigging-form";
            antiforgery.Cookie.HttpOnly = true;
            antiforgery.Cookie.SameSite = SameSiteMode.Strict;
            antiforgery.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        services.AddLimits();
        services.AddScoped<Watch>();
        services.AddScoped<SecurityEvents>();
        services.AddSignIn();
        services.AddSingleton<IClock>(SystemClock.Instance);
        services.AddSingleton<DemoSchool>();
        services.AddScoped<Actor>();
        services.AddScoped<Badge>();
        services.AddScoped<SquawkDesk>();
        services.AddScoped<Drafts>();
        services.AddScoped<SignAct>();
        services.AddScoped<RecordsRoom>();
        services.AddScoped<Touched>();
        services.AddScoped<Lists>();
        services.AddSingleton<BundleMaker>();
        services.AddScoped<Ramp>();
        services.AddSingleton<SchoolSign>();
        services.AddCascadingValue(parts => parts.GetRequiredService<SchoolSign>().Current!);
        services.AddScoped<OfficeBooks>();
        services.AddScoped<Accounts>();
        services.AddScoped<SetUp>();
        services.AddSingleton<SetUpCode>();
        services.AddScoped<FileReport>();
        services.AddScoped<CockpitNews>();
        services.AddScoped<CockpitPin>();
        services.AddSingleton<PinTries>();
        services.AddScoped<Photos>();
        services.AddScoped<Receipts>();
        services.AddApi();
        services.AddNotices();
    }

    public static void Map(WebApplication app)
    {
        app.UseAwayPage();
        app.UseFormsInMemory();
        app.UseForwardedHeaders();
        app.UseSecureHeaders();
        app.UseRateLimiter();
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseReadableAddress();
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseGuestFence();
        app.UseAntiforgery();
        app.UseForeignFormPage();
        app.MapStaticAssets();
        app.MapDrafts();
        app.MapSignOut();
        Passkeys.Map(app);
        app.MapSecurityCsv();
        app.MapRecord();
        app.MapLooseTag();
        app.MapCockpit();
        app.MapFlightCard();
        app.MapPhotos();
        app.MapRecords();
        app.MapApi();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(live => live.ContentSecurityFrameAncestorsPolicy = null);
    }
}
