using System.IO.Compression;
using System.Text;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

/// <summary>Pictures put together byte by byte from the formats' descriptions (ITU-T T.81 for JPEG, ISO/IEC 15948 for PNG, Exif 2.3 for what a camera adds).</summary>
public class PlainPictureTests
{
    /// <summary>Latitude reference and a place name, as a telephone writes them.</summary>
    const string Place = "GPS 51.4775N Greenwich";

    static byte[] Part(byte marker, params byte[] data) => [0xFF, marker, (byte)((data.Length + 2) >> 8), (byte)(data.Length + 2), .. data];

    static byte[] Exif(ushort up) =>
    [
        .. "Exif\0\0II*\0"u8, 8, 0, 0, 0, 2, 0,
        0x12, 0x01, 3, 0, 1, 0, 0, 0, (byte)up, 0, 0, 0,
        0x25, 0x88, 4, 0, 1, 0, 0, 0, 38, 0, 0, 0,
        0, 0, 0, 0, .. Encoding.ASCII.GetBytes(Place),
    ];

    static readonly byte[] Table = Part(0xDB, [.. Enumerable.Range(0, 65).Select(i => (byte)i)]);
    static readonly byte[] Scan = [.. Part(0xDA, 1, 1, 0, 0, 63, 0), 0x12, 0xFF, 0x00, 0x34, 0xFF, 0xD0, 0x56];
    static readonly byte[] Colours = Part(0xE2, [.. "ICC_PROFILE\0"u8, 1, 1, 7, 7]);
    static readonly byte[] Jfif = Part(0xE0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0]);

    static byte[] Jpeg(ushort up) =>
    [
        0xFF, 0xD8, .. Jfif, .. Part(0xE1, Exif(up)), .. Part(0xE1, Encoding.ASCII.GetBytes("http://ns.adobe.com/xap/1.0/\0" + Place)), .. Colours, .. Part(0xED, Encoding.ASCII.GetBytes(Place)),
        .. Part(0xFE, Encoding.ASCII.GetBytes(Place)), .. Table, .. Scan, .. Table, .. Scan, 0xFF, 0xD9, .. Encoding.ASCII.GetBytes("a film hidden behind: " + Place),
    ];

    [Fact]
    public void A_photograph_loses_its_place_and_keeps_every_byte_of_the_picture()
    {
        var (mediaType, bytes) = PlainPicture.Of(Jpeg(up: 1))!.Value;

        Assert.Equal("image/jpeg", mediaType);
        Assert.Equal([0xFF, 0xD8, .. Jfif, .. Colours, .. Table, .. Scan, .. Table, .. Scan, 0xFF, 0xD9], bytes);
    }

    [Fact]
    public void A_photograph_taken_upright_stays_upright_and_says_nothing_else()
    {
        var bytes = PlainPicture.Of(Jpeg(up: 6))!.Value.Bytes;

        Assert.DoesNotContain("GPS", Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
        var again = PlainPicture.Of(bytes)!.Value.Bytes;
        Assert.Equal(bytes, again);
        // Big-endian, one entry: tag 0112, a short, one of them, 6.
        Assert.Contains(Convert.ToHexString([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6]), Convert.ToHexString(bytes), StringComparison.Ordinal);
    }

    static byte[] Chunk(string name, params byte[] data)
    {
        byte[] body = [.. Encoding.ASCII.GetBytes(name), .. data];
        return [(byte)(data.Length >> 24), (byte)(data.Length >> 16), (byte)(data.Length >> 8), (byte)data.Length, .. body, 0, 0, 0, 0];
    }

    [Fact]
    public void A_png_loses_its_texts_times_and_camera_data()
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true)) zlib.Write([0, 1, 2, 3]);
        byte[] start = [0x89, .. "PNG\r\n"u8, 0x1A, (byte)'\n'], header = Chunk("IHDR", 0, 0, 0, 1, 0, 0, 0, 1, 8, 2, 0, 0, 0), data = Chunk("IDAT", packed.ToArray()), end = Chunk("IEND");

        var (mediaType, bytes) = PlainPicture.Of([.. start, .. header, .. Chunk("tEXt", Encoding.ASCII.GetBytes(Place)), .. Chunk("eXIf", Exif(1)), .. Chunk("tIME", 7, 7), .. data, .. end, 1, 2, 3])!.Value;

        Assert.Equal("image/png", mediaType);
        Assert.Equal([.. start, .. header, .. data, .. end], bytes);
    }

    public static TheoryData<byte[]> NoPictures => new([
        [], [0xFF, 0xD8], [0xFF, 0xD8, 0xFF, 0xD9], Encoding.ASCII.GetBytes("<svg onload=alert(1)>"), Encoding.ASCII.GetBytes("GIF89a"),
        Jpeg(1)[..60], [.. Jpeg(1).TakeWhile(b => b != 0xDA)], [0x89, .. "PNG\r\n"u8, 0x1A, (byte)'\n', 0xFF, 0xFF, 0xFF, 0xFF, .. "IHDR"u8, 0, 0, 0, 0],
    ]);

    [Theory, MemberData(nameof(NoPictures))]
    public void What_is_no_whole_picture_is_not_kept(byte[] file) => Assert.Null(PlainPicture.Of(file));

    [Fact]
    public void No_damage_anywhere_makes_it_stumble()
    {
        var whole = Jpeg(6);
        for (var at = 0; at < whole.Length; at++)
        {
            byte[] damaged = [.. whole];
            damaged[at] ^= 0xFF;
            _ = PlainPicture.Of(damaged);
            _ = PlainPicture.Of(damaged.AsSpan(0, at));
        }
    }
}
