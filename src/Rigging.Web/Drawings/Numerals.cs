using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>Numbers as people read them: a real minus, no sign on what a word already says.</summary>
public static class Numerals
{
    public const string Minus = "−", ThinSpace = "\u2009";

    /// <summary>At most so many decimals, a real minus: −0.11.</summary>
    public static string Number(double value, int decimals = 1)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded < 0 ? Minus : "") + Math.Abs(rounded).ToString($"F{decimals}", CultureInfo.InvariantCulture);
    }

    /// <summary>As few decimals as it takes, up to three: a tick on an axis.</summary>
    public static string Short(double value) => (Math.Round(value, 3) < 0 ? Minus : "") + Math.Abs(Math.Round(value, 3)).ToString("0.###", CultureInfo.InvariantCulture);

    public static string Degrees(double value, int decimals = 0) => Number(value, decimals) + "°";

    public static string Of(Side side) => side == Side.Left ? Texts.LeftInText : Texts.RightInText;
}
