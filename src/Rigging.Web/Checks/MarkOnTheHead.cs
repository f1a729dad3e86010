using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;

namespace Rigging.Web.Checks;

/// <summary>
/// Where the mark on an eccentric's head stands, read like the hand of a clock by somebody who looks at one face, as the eccentric's angle.
/// The mark is at the bolt hole's side of the head: at neutral it points level, inboard or outboard as the bushing's offset does.
/// </summary>
static class MarkOnTheHead
{
    /// <summary>Degrees from neutral, positive lowers the trailing edge; null when fitting or neutral offset is not on file: then nobody can say.</summary>
    public static double? AngleDeg(double clock, Side wing, Face face, EccentricOnFile eccentric)
    {
        var offset = wing == Side.Left ? eccentric.NeutralOffset?.Left : eccentric.NeutralOffset?.Right;
        if (Turning.Seen(wing, face, eccentric.BushingIn, offset) is not { } seen) return null;
        // Three o'clock is the right hand; an hour is 30°.
        var clockwiseDeg = (clock - 3) * 30 - seen.HoleAtDeg(0);
        var angle = Math.IEEERemainder(seen.Lowers == Rotation.Clockwise ? clockwiseDeg : -clockwiseDeg, 360);
        return angle == -180 ? 180 : angle + 0.0;
    }

    /// <summary>Hours on a dial: <c>2:30</c>, <c>2.5</c>; null when it is none.</summary>
    public static double? ReadClock(string text)
    {
        var parts = text.Trim().Replace(',', '.').Split(':');
        if (!double.TryParse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var hours) || parts.Length > 2) return null;
        var minutes = 0;
        if (parts.Length == 2 && (parts[0].Contains('.') || parts[1].Length != 2 || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out minutes) || minutes > 59)) return null;
        var clock = hours + minutes / 60.0;
        return clock is >= 0 and < 13 ? clock : null;
    }
}
