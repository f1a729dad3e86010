using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.EntityFrameworkCore;
using Rigging.Storage;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;
using Rigging.Web.Demo;
using Rigging.Web.Desk;
using Rigging.Web.Office;
using Rigging.Web.SignIn;

namespace Rigging.Web.Commands;

/// <summary>The web site, with the private cluster below it unless a server is named.</summary>
static class Serve
{
    public static async Task<int> Run(Options options)
    {
        var builder = Host.Builder(options);
        // The host's own settings may name the server too: an environment variable, a settings file, a test.
        if (options.Connection is null && builder.Configuration.GetConnectionString("Rigging") is { Length: > 0 } configured)
            options = options with { Connection = configured };
        await using var database = await DatabaseAtHand.Open(options);
        await AppRole.Check(database.App);
        await RefusePublishedPasswords(options, database.App);

        await using var app = Host.Build(builder, options, database.App);
        // Its passwords are published, so it stays on this machine.
        if (options is { Demo: true, LoopbackOnly: true })
            await app.Services.GetRequiredService<DemoSchool>().Load(SeedFolder.Shipped);
        await app.Services.GetRequiredService<SchoolSign>().Read();
        var greeting = await Greeting(app);
        database.Cluster?.KeepUp(Complain);
        if (await (database.Cluster?.StepDown(AppContext.BaseDirectory) ?? PrivateCluster.StepDownAlone(AppContext.BaseDirectory)) is { } why)
            Complain($"This process keeps running as root: {why}. Wanted: a folder others can enter, or start it as an ordinary user.");
        try
        {
            await app.StartAsync();
        }
        catch (IOException error) when (error.InnerException is AddressInUseException)
        {
            throw new StartRefusedException($"--port {options.Port}: another program serves there already; wanted: a free port.");
        }
        catch (SocketException error)
        {
            throw new StartRefusedException($"--listen {options.Listen} --port {options.Port}: {error.Message}; wanted: an address of this machine and a port this user may open.");
        }
        foreach (var line in greeting(options.PublicUrl?.ToString().TrimEnd('/') ?? Served(app, options))) Console.WriteLine(line);
        await app.WaitForShutdownAsync();
        return 0;
    }

    static void Complain(string line) => Console.Error.WriteLine($"rigging: {line}");

    /// <summary>The invented school's passwords are in the README: it is not loaded where other machines can reach the site.</summary>
    static async Task RefusePublishedPasswords(Options options, string connection)
    {
        if (!options.Demo || options.LoopbackOnly)
            return;
        await using var db = RiggingDb.Open(connection);
        if (!await db.Installations.AnyAsync())
            throw new StartRefusedException("The invented school has published passwords and is not loaded where other machines can reach the site; wanted: also --no-demo.");
    }

    /// <summary>What to print below the address: read before anybody is served, so that a database that goes away later ends nothing.</summary>
    static async Task<Func<string, IEnumerable<string>>> Greeting(WebApplication app)
    {
        await using var scope = app.Services.CreateAsyncScope();
        var accounts = await scope.ServiceProvider.GetRequiredService<Doorman>().DemoAccounts();
        var needed = await scope.ServiceProvider.GetRequiredService<SetUp>().IsNeeded();
        return address =>
        [
            $"Rigging is at {address}",
            .. accounts.Count > 0 ? [$"Invented school; everybody's password is {Doorman.DemoPassword}"] : (string[])[],
            .. accounts.Select(account => $"  {account.Email,-34} {account.Name}: {account.ActsAs}"),
            .. needed ? [$"No school yet: open {address}/setup and enter the code {app.Services.GetRequiredService<SetUpCode>().Value}"] : (string[])[],
            "Stop with Ctrl-C.",
        ];
    }

    static string Served(WebApplication app, Options options)
    {
        var port = options.Port == 0 && app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() is { } bound
            ? new Uri(bound).Port
            : options.Port;
        // By this name, not by number: browsers offer passkeys and secure features to localhost.
        return IPAddress.IsLoopback(options.Listen) ? $"http://localhost:{port}" : $"http://{new IPEndPoint(options.Listen, port)}";
    }
}
