namespace Rigging.EndToEnd;

/// <summary>The windows people have, in CSS pixels.</summary>
static class Sizes
{
    static readonly (int Width, int Height)[] All = [(390, 844), (820, 1180), (1440, 900)];

    /// <summary>The size that people have most; in a long run every one.</summary>
    public static IEnumerable<(int Width, int Height)> Asked((int Width, int Height) usual) => Long ? All : [usual];

    /// <summary>Every size in a long run, none in a short one.</summary>
    public static IEnumerable<(int Width, int Height)> Further => Long ? All : [];

    static bool Long => Environment.GetEnvironmentVariable("RIGGING_LONG") is not null;
}

/// <summary>Where pictures of pages are kept; null when nobody asked for any.</summary>
static class Pictures
{
    public static string? Folder { get; } = Environment.GetEnvironmentVariable("RIGGING_PICTURES") is { Length: > 0 } named ? Directory.CreateDirectory(named).FullName : null;
}
