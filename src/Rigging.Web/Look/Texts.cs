using System.Globalization;
using System.Resources;
using System.Runtime.CompilerServices;

namespace Rigging.Web.Look;

/// <summary>
/// The words that every page shares, from Texts.resx. Another language is another file beside it, such as Texts.de.resx. A folder that has words of its
/// own to translate keeps a Texts.resx and a class like this one; what the rules say comes from Rigging.Squawks.Rules.Words.
/// </summary>
static class Texts
{
    internal static readonly ResourceManager Resources = new("Rigging.Web.Look.Texts", typeof(Texts).Assembly);

    public static string AsThisDevice => Of();
    public static string Caution => Of();
    public static string Choose => Of();
    public static string ConnectionLost => Of();
    public static string ConnectionTrying => Of();
    public static string CrewOnly => Of();
    public static string Dark => Of();
    public static string Display => Of();
    public static string Good => Of();
    public static string Grounded => Of();
    public static string Held => Of();
    public static string HighContrast => Of();
    public static string Less(object what) => Of().Replace("{0}", $"{what}", StringComparison.Ordinal);
    public static string Light => Of();
    public static string LoadAgain => Of();
    public static string Loading => Of();
    public static string MainNavigation => Of();
    public static string MayFly => Of();
    public static string MayFlyWithLimits => Of();
    public static string More(object what) => Of().Replace("{0}", $"{what}", StringComparison.Ordinal);
    public static string NeedsScript => Of();
    public static string NotFound => Of();
    public static string NotFoundTitle => Of();
    public static string NotFoundWords => Of();
    public static string Note => Of();
    public static string NumbersToo => Of();
    public static string OneThingWrong => Of();
    public static string Optional => Of();
    public static string PageFailed => Of();
    public static string Ramp => Of();
    public static string Report => Of();
    public static string School => Of();
    public static string SignIn => Of();
    public static string SignOut => Of();
    public static string SkipToPage => Of();
    public static string Statement => Of();
    public static string Stop => Of();
    public static string ThingsWrong(object what) => Of().Replace("{0}", $"{what}", StringComparison.Ordinal);
    public static string Waiting => Of();
    public static string WaitingFor(object what) => Of().Replace("{0}", $"{what}", StringComparison.Ordinal);

    static string Of([CallerMemberName] string name = "") =>
        Resources.GetString(name, CultureInfo.CurrentUICulture) ?? throw new MissingManifestResourceException($"Texts.resx has no “{name}”.");
}
