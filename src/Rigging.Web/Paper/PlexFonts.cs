using System.Buffers.Binary;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Rigging.Web.Paper;

/// <summary>The faces set on paper; embedded in the program, so no machine needs fonts installed.</summary>
public enum Typeface { Text, Strong, Slanted, Figures, StrongFigures }

/// <summary>Gives the PDF library our embedded faces, and says which characters each can set.</summary>
sealed class PlexFonts : IFontResolver
{
    static readonly Dictionary<Typeface, string> Files = new()
    {
        [Typeface.Text] = "IBMPlexSans-Regular.ttf",
        [Typeface.Strong] = "IBMPlexSans-SemiBold.ttf",
        [Typeface.Slanted] = "IBMPlexSans-Italic.ttf",
        [Typeface.Figures] = "IBMPlexMono-Regular.ttf",
        [Typeface.StrongFigures] = "IBMPlexMono-SemiBold.ttf",
    };

    static readonly Dictionary<Typeface, byte[]> Bytes = Files.ToDictionary(file => file.Key, file => Read(file.Value));
    static readonly Dictionary<Typeface, HashSet<int>> Characters = Bytes.ToDictionary(face => face.Key, face => CharactersOf(face.Value));

    // The library holds one resolver for the whole process and refuses a second.
    static PlexFonts() => GlobalFontSettings.FontResolver = new PlexFonts();

    public static XFont Font(Typeface face, double size) => new(face.ToString(), size, XFontStyleEx.Regular, XPdfFontOptions.UnicodeDefault);

    public static byte[] BytesOf(Typeface face) => Bytes[face];

    public static bool CanSet(Typeface face, int character) => Characters[face].Contains(character);

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => Enum.TryParse<Typeface>(familyName, out _) ? new FontResolverInfo(familyName) : null;

    public byte[]? GetFont(string faceName) => Bytes[Enum.Parse<Typeface>(faceName)];

    static byte[] Read(string name)
    {
        using var stream = typeof(PlexFonts).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"{name} is not embedded");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }

    /// <summary>The segments of the font's Unicode table (OpenType 1.9, table cmap, format 4: the basic plane).</summary>
    static HashSet<int> CharactersOf(ReadOnlySpan<byte> font)
    {
        HashSet<int> found = [];
        int Word(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);
        int Long(ReadOnlySpan<byte> bytes, int at) => (int)BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]);
        for (var table = 12; table < 12 + 16 * Word(font, 4); table += 16)
        {
            if (!font.Slice(table, 4).SequenceEqual("cmap"u8)) continue;
            var cmap = Long(font, table + 8);
            for (var record = cmap + 4; record < cmap + 4 + 8 * Word(font, cmap + 2); record += 8)
            {
                var map = cmap + Long(font, record + 4);
                if (Word(font, map) != 4) continue;
                var segments = Word(font, map + 6);
                for (var s = 0; s < segments; s += 2)
                    for (var c = Word(font, map + 16 + segments + s); c <= Word(font, map + 14 + s) && c < 0xFFFF; c++)
                        found.Add(c);
            }
        }
        return found;
    }
}
