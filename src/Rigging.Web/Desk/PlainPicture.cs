using System.Buffers.Binary;

namespace Rigging.Web.Desk;

/// <summary>A photograph without what its camera wrote beside it: where and when it was taken, by whose device. The picture itself is not touched, nor which way up it is.</summary>
public static class PlainPicture
{
    const int Orientation = 0x0112;

    static ReadOnlySpan<byte> PngStart => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    // What a PNG needs to look as it does; texts, times and camera data are not among it.
    static readonly string[] PngParts = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT", "pHYs", "bKGD"];

    /// <summary>Null when it is neither a JPEG nor a PNG, or not a whole one.</summary>
    public static (string MediaType, byte[] Bytes)? Of(ReadOnlySpan<byte> file)
    {
        if (file.StartsWith(PngStart)) return Png(file) is { } png ? ("image/png", png) : null;
        if (file is [0xFF, 0xD8, ..]) return Jpeg(file) is { } jpeg ? ("image/jpeg", jpeg) : null;
        return null;
    }

    static byte[]? Png(ReadOnlySpan<byte> file)
    {
        using var plain = new MemoryStream();
        plain.Write(PngStart);
        for (var at = PngStart.Length; at + 12 <= file.Length;)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > file.Length - at - 12) return null;
            var name = System.Text.Encoding.ASCII.GetString(file.Slice(at + 4, 4));
            if (PngParts.Contains(name)) plain.Write(file.Slice(at, (int)length + 12));
            if (name == "IEND") return plain.ToArray();
            at += (int)length + 12;
        }
        return null;
    }

    static byte[]? Jpeg(ReadOnlySpan<byte> file)
    {
        using var plain = new MemoryStream();
        plain.Write([0xFF, 0xD8]);
        for (var at = 2; at + 4 <= file.Length;)
        {
            if (file[at] != 0xFF) return null;
            var marker = file[at + 1];
            if (marker == 0xFF) { at++; continue; }
            var length = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            if (length < 2 || at + 2 + length > file.Length) return null;
            var part = file.Slice(at, length + 2);
            if (marker == 0xE1 && UpOf(part) is { } up) plain.Write(OnlyUp(up));
            else if (Needed(marker, part)) plain.Write(part);
            at += length + 2;
            if (marker != 0xDA) continue;
            // The picture's own data, up to the next marker that is not part of it.
            var from = at;
            while (at + 1 < file.Length && (file[at] != 0xFF || file[at + 1] is 0 or 0xFF or (>= 0xD0 and <= 0xD7))) at++;
            plain.Write(file[from..at]);
            if (at + 1 >= file.Length) return null;
            if (file[at + 1] != 0xD9) continue;
            // Whatever hangs behind the end of the picture stays behind.
            plain.Write([0xFF, 0xD9]);
            return plain.ToArray();
        }
        return null;
    }

    // Application data hold what a camera adds; two of them the colours need.
    static bool Needed(byte marker, ReadOnlySpan<byte> part) => marker switch
    {
        0xE0 or 0xEE => true,
        0xE2 => part[4..].StartsWith("ICC_PROFILE\0"u8),
        >= 0xE1 and <= 0xEF or 0xFE => false,
        _ => true,
    };

    /// <summary>Which way up the camera was held, 2 to 8; null when as usual, or when it is not said.</summary>
    static ushort? UpOf(ReadOnlySpan<byte> part)
    {
        if (!part[4..].StartsWith("Exif\0\0"u8) || part.Length < 26) return null;
        var tiff = part[10..];
        var little = tiff.StartsWith("II"u8);
        ushort Two(ReadOnlySpan<byte> at) => little ? BinaryPrimitives.ReadUInt16LittleEndian(at) : BinaryPrimitives.ReadUInt16BigEndian(at);
        var first = little ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]);
        if (first > tiff.Length - 2) return null;
        var entries = tiff[(int)first..];
        for (int i = 0, count = Two(entries); i < count && 2 + (i + 1) * 12 <= entries.Length; i++)
            if (Two(entries[(2 + i * 12)..]) == Orientation)
                return Two(entries[(10 + i * 12)..]) is >= 2 and <= 8 and var up ? up : null;
        return null;
    }

    /// <summary>Camera data that say nothing but which way is up.</summary>
    static byte[] OnlyUp(ushort up) =>
    [
        0xFF, 0xE1, 0, 34, .. "Exif\0\0MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)up, 0, 0, 0, 0, 0, 0,
    ];
}
