using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using Rigging.Storage;
using Rigging.Web.Notices;
using Rigging.Web.SignIn;

namespace Rigging.Web.Commands;

/// <summary>The web host around the <see cref="Site"/>: where it listens, who may address it, its health.</summary>
static class Host
{
    public static WebApplicationBuilder Builder(Options options)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = [.. options.ForTheHost],
            // Settings and assets lie beside the program, wherever it was started from.
            ContentRootPath = options.ForTheHost.Any(word => word.StartsWith("--contentRoot", StringComparison.Ordinal)) ? null : AppContext.BaseDirectory,
        });
        // Without it a program run from its build folder finds the packages' assets in development only.
        builder.WebHost.UseStaticWebAssets();
        // Read anew at every request, styles and scripts would go out uncompressed: ten times the weight, and nobody edits them under a running program.
        builder.Configuration["ReloadStaticAssetsAtRuntime"] ??= "false";
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            if (IPAddress.IsLoopback(options.Listen) && options.Port != 0)
                kestrel.ListenLocalhost(options.Port);
            else
                kestrel.Listen(options.Listen, options.Port);
        });
        // A foreign page in this machine's browser reaches a site on loopback under a name of its own; behind a proxy the proxy decides.
        builder.Configuration["AllowedHosts"] ??= options.PublicUrl is null ? "localhost;127.0.0.1;[::1]" : "*";
        // Only a proxy on this machine, or one that was named, is asked who sent it: limits and the list of security events go by that address.
        builder.Services.Configure<ForwardedHeadersOptions>(forwarded =>
        {
            forwarded.ForwardedHeaders = options.PublicUrl is null ? ForwardedHeaders.None : ForwardedHeaders.XForwardedFor;
            foreach (var proxy in options.Proxies)
                forwarded.KnownIPNetworks.Add(proxy);
        });
        builder.Configuration[$"{MailSettings.Section}:Site"] ??= options.PublicUrl?.ToString();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(5));
        return builder;
    }

    public static WebApplication Build(WebApplicationBuilder builder, Options options, string connection)
    {
        builder.Services.AddRiggingStorage(connection);
        builder.Services.AddSingleton(new Reach(options.LoopbackOnly));
        builder.Services.AddSingleton(options);
        builder.Services.AddProblemDetails();
        builder.Services.AddHealthChecks().AddCheck<DatabaseReady>("database", tags: ["ready"]);
        Site.AddParts(builder.Services);

        var app = builder.Build();
        app.UseExceptionHandler();
        if (options.PublicUrl is { } url)
            app.Use((http, next) =>
            {
                // We know the address that people use and need not take a proxy's word for it.
                (http.Request.Scheme, http.Request.Host) = (url.Scheme, HostString.FromUriComponent(url));
                return next(http);
            });
        app.MapHealthChecks("/health/live", new() { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks("/health/ready", new() { Predicate = check => check.Tags.Contains("ready") }).AllowAnonymous();
        Site.Map(app);
        return app;
    }
}
