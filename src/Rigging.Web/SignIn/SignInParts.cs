using System.Security.Claims;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
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
        app.MapPost("/sign-out", async (HttpContext http, SignInManager<User> signIn, IAntiforgery antiforgery) =>
        {
            // Asked here: the middleware only notes the fault where no form field is read.
            if (!await antiforgery.IsRequestValidAsync(http)) return Results.BadRequest();
            await signIn.SignOutAsync();
            return Results.LocalRedirect("/sign-in");
        }).DisableAntiforgery().ExcludeFromDescription();

    /// <summary>The cookie says which person it is, by id and name, and nothing about what they may do.</summary>
    sealed class PersonPrincipal(UserManager<User> users, IOptions<IdentityOptions> options, IDbContextFactory<RiggingDb> databases)
        : UserClaimsPrincipalFactory<User>(users, options)
    {
        protected override async Task<ClaimsIdentity> GenerateClaimsAsync(User user)
        {
            var identity = await base.GenerateClaimsAsync(user);
            identity.AddClaim(new(Actor.PersonClaim, user.PersonId.ToString()));
            await using var db = await databases.CreateDbContextAsync();
            if (identity.FindFirst(identity.NameClaimType) is { } email
                && await db.People.Where(person => person.Id == user.PersonId).Select(person => person.Name).SingleOrDefaultAsync() is { } name)
            {
                identity.RemoveClaim(email);
                identity.AddClaim(new(identity.NameClaimType, name));
            }
            return identity;
        }
    }
}
