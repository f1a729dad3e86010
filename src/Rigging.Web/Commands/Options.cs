using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Rigging.Storage;

namespace Rigging.Web.Commands;

/// <summary>The command line, read strictly: a word that is not known is refused, never ignored.</summary>
/// <param name="Port">0 takes any free port.</param>
/// <param name="Data">Folder of the private cluster.</param>
/// <param name="Connection">Of an existing server; null starts a private cluster.</param>
/// <param name="PublicUrl">What people type into a browser when a proxy with TLS stands in front.</param>
/// <param name="Proxies">Where a proxy speaks from whose word on the sender's address is taken; this machine's is always.</param>
/// <param name="ForTheHost">Settings handed on as they are, such as <c>--Mail:Host=…</c>.</param>
/// <param name="Words">What follows the command without dashes, such as a file.</param>
/// <param name="Seal">File of a seal that was kept elsewhere.</param>
public sealed record Options(
    string Command, int Port, string Data, bool Demo, string? Connection, IPAddress Listen, Uri? PublicUrl, IReadOnlyList<string> ForTheHost,
    IReadOnlyList<string> Words, IReadOnlyList<IPNetwork> Proxies, string? Seal = null)
{
    public const string Usage = """
        usage: rigging [COMMAND] [options]

          serve                   the web site (what you get without a word)
          migrate                 bring the database up to this version
          rebuild                 write every squawk's projection anew from its ledger
          verify                  check every ledger's chain and every seal; ends with 1 and names the first bad entry
          verify --seal FILE      also against a seal that was kept elsewhere
          verify FILE             check an exported bundle; needs no database
          seal                    seal everything up to now and print the seal, to be kept elsewhere
          export squawk N FILE    one squawk as a bundle: its exact entries, records, the register's extract
          export aircraft R FILE  every squawk of the aircraft registered R, as when it is sold with its records
          export all FILE         everything
          erase P-N               take a person's name, contacts and numbers out of the register; ledgers stay as they are
          database                run the private database alone and print how to connect, until input ends

          --port N             port to serve on (5080); 0 takes any free one
          --data DIR           folder of the private database (.local here): empty, or made by Rigging
          --connection STRING  use this PostgreSQL server instead of a private one
          --listen ADDRESS     IP address to serve on (loopback only)
          --public-url URL     https address that people use, where a proxy with TLS stands in front
          --proxy ADDRESS      IP address or network of that proxy, where it is not on this machine; several with commas
          --no-demo            do not load the invented school
          --Section:Key=VALUE  any setting of the host, such as --Mail:Host=smtp.example.org
        """;

    // And how many words may follow each.
    static readonly Dictionary<string, int> Commands = new()
    {
        ["serve"] = 0,
        ["migrate"] = 0,
        ["rebuild"] = 0,
        ["verify"] = 1,
        ["seal"] = 0,
        ["export"] = 3,
        ["erase"] = 1,
        ["database"] = 0,
        ["help"] = 0,
    };

    // What the test host and the framework's own tools say to every program.
    static readonly string[] HostWords = ["environment", "contentRoot", "applicationName"];

    /// <summary>Whether nobody but this machine can reach the site.</summary>
    public bool LoopbackOnly => IPAddress.IsLoopback(Listen) && PublicUrl is not { IsLoopback: false };

    public static Options Read(IReadOnlyList<string> line)
    {
        var options = new Options("serve", 5080, ".local", Demo: true, null, IPAddress.Loopback, null, [], [], []);
        HashSet<string> seen = [];
        var words = new Queue<string>(line);
        if (words.TryPeek(out var first) && !first.StartsWith('-'))
            options = options with { Command = Commands.ContainsKey(words.Dequeue()) ? first : throw Wrong(first, "is not a command", string.Join(", ", Commands.Keys)) };
        while (options.Words.Count < Commands[options.Command] && words.TryPeek(out var next) && !next.StartsWith('-'))
            options = options with { Words = [.. options.Words, words.Dequeue()] };

        while (words.TryDequeue(out var word))
        {
            if (word is "--help" or "-h")
                return options with { Command = "help" };
            var (name, given) = word.Split('=', 2) is [var before, var after] ? (before, after) : (word, (string?)null);
            if (!name.StartsWith("--", StringComparison.Ordinal))
                throw Wrong(word, "is not an option", "one that begins with --; see rigging help");
            if (name.Contains(':', StringComparison.Ordinal) || HostWords.Contains(name[2..]))
            {
                options = options with { ForTheHost = [.. options.ForTheHost, given is null ? $"{name}={Value()}" : word] };
                continue;
            }
            if (!seen.Add(name))
                throw Wrong(name, "is given twice", "once");
            options = name switch
            {
                "--no-demo" when given is null => options with { Demo = false },
                "--no-demo" => throw Wrong(word, "takes no value", "--no-demo alone"),
                "--port" => options with { Port = PortFrom(Value()) },
                "--data" => options with { Data = Value() },
                "--seal" when options.Command == "verify" => options with { Seal = Value() },
                "--connection" => options with { Connection = ConnectionFrom(Value()) },
                "--listen" => options with { Listen = AddressFrom(Value()) },
                "--public-url" => options with { PublicUrl = PublicUrlFrom(Value()) },
                "--proxy" => options with { Proxies = ProxiesFrom(Value()) },
                _ => throw Wrong(name, "is not an option", "see rigging help"),
            };

            string Value() =>
                given is { Length: > 0 } ? given
                : given is null && words.TryPeek(out var next) && next.Length > 0 && !next.StartsWith("--", StringComparison.Ordinal) ? words.Dequeue()
                : throw Wrong(name, "has no value", $"{name} followed by one");
        }
        if (options is { Proxies.Count: > 0, PublicUrl: null })
            throw Wrong("--proxy", "is said of a site that has no public address", "also --public-url https://…");
        return options.LoopbackOnly || options.PublicUrl is not null ? options : throw Wrong(
            $"--listen {options.Listen}", "opens the site to other machines",
            "also --public-url https://… : the address of a proxy with TLS in front, since passwords must not travel in the clear");
    }

    static int PortFrom(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port <= 65535
            ? port : throw Wrong($"--port {text}", "is not a port", "a whole number from 1 to 65535 (0 takes any free one)");

    static IPAddress AddressFrom(string text) =>
        text == "localhost" ? IPAddress.Loopback
        : IPAddress.TryParse(text, out var address) ? address
        : throw Wrong($"--listen {text}", "is not an IP address", "one such as 127.0.0.1, 192.168.1.20, 0.0.0.0 or ::");

    static Uri PublicUrlFrom(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var url)
            && (url.Scheme == Uri.UriSchemeHttps || (url.Scheme == Uri.UriSchemeHttp && url.IsLoopback))
            && url is { AbsolutePath: "/", Query: "", Fragment: "", UserInfo: "" }
            ? url : throw Wrong($"--public-url {text}", "is not an address to publish", "https://host or https://host:port and nothing after it");

    static IReadOnlyList<IPNetwork> ProxiesFrom(string text) => [.. text.Split(',').Select(one =>
        IPAddress.TryParse(one, out var address) ? new IPNetwork(address, address.AddressFamily == AddressFamily.InterNetwork ? 32 : 128)
        : IPNetwork.TryParse(one, out var network) && network.PrefixLength > 0 ? network
        : throw Wrong($"--proxy {one}", "is no address or network", "one such as 192.168.1.5 or 172.30.5.0/24, the proxy's own"))];

    static string ConnectionFrom(string text)
    {
        try
        {
            if (new Npgsql.NpgsqlConnectionStringBuilder(text) is { Host: { Length: > 0 }, Username: { Length: > 0 }, Database: { Length: > 0 } })
                return text;
        }
        catch (ArgumentException)
        {
            // Said below, without the text: it may hold a password.
        }
        throw Wrong("--connection", "is not a PostgreSQL connection string", "\"Host=…;Database=…;Username=…;Password=…\"");
    }

    static StartRefusedException Wrong(string what, string isWrong, string wanted) => new($"{what} {isWrong}; wanted: {wanted}.");
}
