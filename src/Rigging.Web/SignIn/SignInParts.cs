using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Rigging.Storage;
using Rigging.Storage.School;
using Rigging.Web.Desk;

namespace Rigging.Web.SignIn;

static class SignInParts
{
    public static IServiceCollection AddSignIn(this IServiceCollection services)
    {
        services.AddCascadingAuthenticationState();
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.AddAuthorizationBuilder().SetFallbackPolicy(null);
        services.ConfigureApplicationCookie(cookie =>
        {
            cookie.LoginPath = "/sign-in";
            cookie.LogoutPath = "/sign-out";
            cookie.AccessDeniedPath = "/";
            cookie.ReturnUrlParameter = "ReturnUrl";
            cookie.Cookie.Name = "rigging";
            cookie.Cookie.HttpOnly = true;
            cookie.Cookie.SameSite = SameSiteMode.Lax;
            cookie.ExpireTimeSpan = TimeSpan.FromHours(12);
            // A script that saves a draft wants to be told, not sent to a page.
            cookie.Events.OnRedirectToLogin = context =>
            {
                if (context.Request.Path.StartsWithSegments("/drafts") || context.Request.Path.StartsWithSegments("/api"))
                    context.Response.StatusCode = StatusCodes.Status401Unauthorized;
                else
                    context.Response.Redirect(context.RedirectUri);
                return Task.CompletedTask;
            };
        });
        services.AddIdentityCore<User>(identity =>
            {
                identity.User.RequireUniqueEmail = true;
                identity.Password.RequiredLength = 12;
                identity.Password.RequireNonAlphanumeric = false;
                identity.Password.RequireUppercase = false;
                identity.Password.RequireDigit = false;
                identity.Lockout.MaxFailedAccessAttempts = 5;
                identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
            })
            .AddEntityFrameworkStores<RiggingDb>()
            .AddSignInManager()
            .AddClaimsPrincipalFactory<PersonPrincipal>();
        services.AddScoped<Doorman>();
        return services;
    }

    public static void MapSignOut(this IEndpointRouteBuilder app) =>
        app.MapPost("/sign-out", async (SignInManager<User> signIn) =>
        {
            await signIn.SignOutAsync();
            return Results.LocalRedirect("/sign-in");
        }).WithMetadata(new Microsoft.AspNetCore.Antiforgery.RequireAntiforgeryTokenAttribute(true)).ExcludeFromDescription();

    /// <summary>The cookie says which person it is and nothing about what they may do.</summary>
    sealed class PersonPrincipal(UserManager<User> users, IOptions<IdentityOptions> options) : UserClaimsPrincipalFactory<User>(users, options)
    {
        protected override async Task<ClaimsIdentity> GenerateClaimsAsync(User user)
        {
            var identity = await base.GenerateClaimsAsync(user);
            identity.AddClaim(new(Actor.PersonClaim, user.PersonId.ToString()));
            return identity;
        }
    }
}
