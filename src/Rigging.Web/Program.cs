using Microsoft.EntityFrameworkCore;
using Rigging.Storage;
using Rigging.Web.Commands;

// dotnet-ef runs the program to look for a host; it needs none.
if (EF.IsDesignTime) return 0;

try
{
    var options = Options.Read(args);
    return options.Command switch
    {
        "serve" => await Serve.Run(options),
        "migrate" => await Migrate.Run(options),
        "rebuild" => await Audit.Rebuild(options),
        "verify" => await Audit.Verify(options),
        "seal" => await Audit.Seal(options),
        "export" => await Export.Run(options),
        "erase" => await Erase.Run(options),
        "database" => await Database.Run(options),
        "help" => Help(),
        var unknown => throw new InvalidOperationException($"The command line lets '{unknown}' through and nothing does it."),
    };
}
catch (StartRefusedException refused)
{
    await Console.Error.WriteLineAsync($"rigging: {refused.Message}");
    return 2;
}

static int Help()
{
    Console.WriteLine(Options.Usage);
    return 0;
}

/// <summary>Named so that tests can start the host.</summary>
public partial class Program;
