using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NodaTime;
using NodaTime.Text;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Ledgers;

/// <summary>How far one ledger had come when it was sealed: its length and the hash of its last entry.</summary>
public sealed record SealedHead(SquawkId Squawk, int Number, int Length, byte[] Hash)
{
    internal string Line => string.Create(CultureInfo.InvariantCulture, $"S-{Number} {Squawk} {Length} {Convert.ToHexStringLower(Hash)}");
}

/// <summary>One root over all ledgers at one moment, as a text that a school keeps elsewhere: what stood below it cannot be rewritten unseen.</summary>
/// <param name="Number">Counts from 1 at an installation.</param>
/// <param name="Day">The school's calendar day that the seal stands for.</param>
/// <param name="Previous">SHA-256 of the seal before it; 32 zero bytes in the first.</param>
public sealed record Seal(int Number, Guid Installation, LocalDate Day, Instant SealedAt, byte[] Previous, IReadOnlyList<SealedHead> Heads)
{
    const string Title = "Rigging seal, form 1";
    const int LinesBeforeHeads = 9;
    static readonly InstantPattern Moment = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss.fff'Z'");

    /// <summary>What comes before the first seal.</summary>
    public static byte[] Nothing => new byte[32];

    public int Entries => Heads.Sum(head => head.Length);

    /// <summary>SHA-256 over the ledgers' lines, each ended by a line feed.</summary>
    public byte[] Root => SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(Heads.Select(head => head.Line + "\n"))));

    /// <summary>The whole seal: lines ended by a line feed, ASCII.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"""
        {Title}
        installation {Installation}
        seal {Number}
        day {LocalDatePattern.Iso.Format(Day)}
        sealed {Moment.Format(SealedAt)}
        previous {Convert.ToHexStringLower(Previous)}
        ledgers {Heads.Count}
        entries {Entries}
        root {Convert.ToHexStringLower(Root)}

        """).ReplaceLineEndings("\n") + string.Concat(Heads.Select(head => head.Line + "\n"));

    /// <summary>What the next seal names as the one before it.</summary>
    public byte[] Hash => HashOf(Text);

    public static byte[] HashOf(string text) => SHA256.HashData(Encoding.UTF8.GetBytes(text));

    /// <summary>A seal that was written down, or why the text is none: reading accepts exactly what <see cref="Text"/> writes, line ends aside.</summary>
    public static (Seal? Seal, string? Fault) Read(string text)
    {
        var lines = text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        if (lines[0] != Title) return (null, $"line 1 is “{Short(lines[0])}”; wanted “{Title}”");
        if (lines.Length < LinesBeforeHeads) return (null, $"it ends after line {lines.Length}; wanted at least {LinesBeforeHeads} lines");
        try
        {
            var at = 1;
            string Value(string name) => lines[at].StartsWith(name + " ", StringComparison.Ordinal) ? lines[at++][(name.Length + 1)..]
                : throw new FormatException($"line {at + 1} is “{Short(lines[at])}”; wanted “{name} …”");
            T Parsed<T>(string name, Func<string, T> parse)
            {
                var value = Value(name);
                try
                {
                    return parse(value);
                }
                catch (Exception error) when (error is FormatException or OverflowException or UnparsableValueException)
                {
                    throw new FormatException($"line {at} says {name} “{Short(value)}”, which cannot be read");
                }
            }
            var installation = Parsed("installation", text => Guid.ParseExact(text, "D"));
            var number = Parsed("seal", Whole);
            var day = Parsed("day", value => LocalDatePattern.Iso.Parse(value).Value);
            var moment = Parsed("sealed", value => Moment.Parse(value).Value);
            var previous = Parsed("previous", Hash32);
            var (ledgers, entries, root) = (Parsed("ledgers", Whole), Parsed("entries", Whole), Parsed("root", Hash32));
            var seal = new Seal(number, installation, day, moment, previous, [.. lines[LinesBeforeHeads..].Select((line, index) => HeadIn(line, index + LinesBeforeHeads + 1))]);
            if (seal.Heads.Count != ledgers) return (null, $"it says {ledgers} ledgers and lists {seal.Heads.Count}");
            if (seal.Entries != entries) return (null, $"it says {entries} entries and lists {seal.Entries}");
            if (!seal.Root.AsSpan().SequenceEqual(root)) return (null, "its root does not follow from its ledgers: the text was changed");
            return (seal, null);
        }
        catch (FormatException error)
        {
            return (null, error.Message);
        }
    }

    static SealedHead HeadIn(string line, int number)
    {
        try
        {
            if (line.Split(' ') is [['S', '-', .. var squawk], var id, var length, var hash])
                return new(new(Guid.ParseExact(id, "D")), Whole(squawk), Whole(length), Hash32(hash));
        }
        catch (FormatException)
        {
            // Said below, with the line.
        }
        throw new FormatException($"line {number} is “{Short(line)}”; wanted S-number, squawk, length and hash");
    }

    static int Whole(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : throw new FormatException();

    static byte[] Hash32(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigitLower) ? Convert.FromHexString(text) : throw new FormatException();

    static string Short(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
