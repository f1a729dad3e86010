using System.Globalization;
using System.Security.Claims;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Storage.School;
using Rigging.Web.Desk;
using Rigging.Web.Security;

namespace Rigging.Web.SignIn;

static class SignInParts
{
    /// <summary>What is asked for by scripts and programs.</summary>
    static readonly string[] Scripts = ["/drafts", "/passkeys", "/api"];

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
            // Over TLS it never travels without; on loopback there is none.
            cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            cookie.ExpireTimeSpan = Sessions.Longest.ToTimeSpan();
            // Not the framework's own check: the session's row is asked at every request, so ending it ends it now.
            cookie.Events.OnValidatePrincipal = async context =>
            {
                if (context.HttpContext.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null) return;
                if (await context.HttpContext.RequestServices.GetRequiredService<Sessions>().IsOpen(context.Principal!)) return;
                context.RejectPrincipal();
                await context.HttpContext.SignOutAsync(context.Scheme.Name);
            };
            // A script that saves a draft wants to be told, not sent to a page.
            cookie.Events.OnRedirectToLogin = context =>
            {
                if (Scripts.Any(path => context.Request.Path.StartsWithSegments(path)))
                {
                    // No page in its place: asked for again as a post, that page would answer 400.
                    context.HttpContext.Features.Get<IStatusCodePagesFeature>()?.Enabled = false;
                    context.Response.StatusCode = StatusCodes.Status401Unauthorized;
                }
                else
                {
                    context.Response.Redirect(context.RedirectUri);
                }
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
                identity.Password.RequireLowercase = false;
                identity.Lockout.MaxFailedAccessAttempts = 5;
                identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
            })
            .AddEntityFrameworkStores<RiggingDb>()
            .AddSignInManager()
            .AddPasswordValidator<PlainPassword>()
            .AddClaimsPrincipalFactory<PersonPrincipal>();
        services.Configure<IdentityPasskeyOptions>(passkeys =>
        {
            // It stands for a password, so its owner must be there; and nobody types an address before using one.
            passkeys.UserVerificationRequirement = "required";
            passkeys.ResidentKeyRequirement = "required";
        });
        services.AddSingleton<Doorstep>();
        services.AddSingleton<Sessions>();
        services.AddScoped<Doorman>();
        services.AddScoped<Passkeys>();
        services.AddScoped<Account>();
        services.AddScoped<Invitations>();
        return services;
    }

    public static void MapSignOut(this IEndpointRouteBuilder app) =>
        app.MapPost("/sign-out", async (HttpContext http, SignInManager<User> signIn, IAntiforgery antiforgery, Sessions sessions, Watch watch) =>
        {
            // Asked here: the middleware only notes the fault where no form field is read.
            if (!await antiforgery.IsRequestValidAsync(http)) return Results.BadRequest();
            if (Actor.PersonOf(http.User) is { } person && Sessions.Of(http.User) is { } session)
            {
                await sessions.End(person, session);
                await watch.Note(SecurityEventKind.SignedOut, person, "");
            }
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
            var person = await db.People.AsNoTracking().SingleAsync(row => row.Id == user.PersonId);
            if (identity.FindFirst(identity.NameClaimType) is { } email) identity.RemoveClaim(email);
            identity.AddClaim(new(identity.NameClaimType, person.Name));
            // Not what a guest may do: a squawk's number, so that a guest can be kept on its pages. It never changes for them.
            if (person.GuestOf is { } squawk)
                identity.AddClaim(new(GuestFence.Claim, (await db.Squawks.Where(row => row.Id == squawk).Select(row => row.Number).SingleAsync()).ToString(CultureInfo.InvariantCulture)));
            return identity;
        }
    }
}
