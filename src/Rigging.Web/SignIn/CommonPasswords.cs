using System.IO.Compression;

namespace Rigging.Web.SignIn;

/// <summary>Passwords that are tried first: those of six characters and more among the 30,000 most used of a published collection of leaked ones.</summary>
/// <remarks>The order list of zxcvbn 4.4.2 (Dan Wheeler and Dropbox, MIT licence), less a few names of manufacturers.</remarks>
static class CommonPasswords
{
    const int Shortest = 6;

    static readonly Lazy<HashSet<string>> Known = new(Read);

    /// <summary>What is left of a password, in small letters, without the longest common one that stands in it.</summary>
    public static string Without(string password)
    {
        var plain = password.ToLowerInvariant();
        for (var length = plain.Length; length >= Shortest; length--)
            for (var from = 0; from + length <= plain.Length; from++)
                if (Known.Value.Contains(plain.Substring(from, length)))
                    return plain.Replace(plain.Substring(from, length), "", StringComparison.Ordinal);
        return plain;
    }

    static HashSet<string> Read()
    {
        using var packed = typeof(CommonPasswords).Assembly.GetManifestResourceStream("common-passwords.txt.gz")!;
        using var text = new StreamReader(new GZipStream(packed, CompressionMode.Decompress));
        return [.. text.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries)];
    }
}
