using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.FlightCard;

/// <summary>One thing to fly and read.</summary>
/// <param name="BothSides">The same point with the wheel last moved to the left and to the right: what friction needs to show itself.</param>
sealed record CardPoint(Manoeuvre Manoeuvre, double CasKt, double AltitudeFt, double PowerPercent, double FlapDeg, bool BothSides)
{
    /// <summary>Whether it is timed after letting go, or read while held.</summary>
    public bool Timed => Manoeuvre is Manoeuvre.ReleaseAll or Manoeuvre.ReleaseWheel or Manoeuvre.HoldNeutral;

    public string Title => Manoeuvre switch
    {
        Manoeuvre.ReleaseAll => Say.LetGoOfEverything,
        Manoeuvre.ReleaseWheel => Say.LetGoOfWheel,
        Manoeuvre.HoldNeutral => Say.WheelHeldAtItsMark,
        Manoeuvre.HoldLevel => Say.HoldLevelFeetOff,
        Manoeuvre.HoldStraight => Say.HoldLevelBallCentred,
        _ => Say.BurnOneSideUntil,
    };

    public string Hold => Manoeuvre switch
    {
        Manoeuvre.ReleaseAll => Say.TrimmedWingsLevelNote,
        Manoeuvre.ReleaseWheel => Say.WingsLevelBallCentred,
        Manoeuvre.HoldNeutral => Say.WingsLevelBallCentredHold,
        Manoeuvre.HoldLevel => Say.KeepWingsLevelWithWheel,
        Manoeuvre.HoldStraight => Say.KeepWingsLevelAndBall,
        _ => Say.OneTankSelectedBall,
    };

    /// <summary>"95 kt, 3000 ft, 65 % power, flaps up".</summary>
    public string Where => string.Join(", ",
        $"{Words.Number(CasKt, 0)}{Directions.Space}kt", $"{Words.Number(AltitudeFt, 0)}{Directions.Space}ft", Gaps.Fill(Say.Power, Words.Number(PowerPercent, 0)), FlapDeg == 0 ? Say.FlapsUp : Gaps.Fill(Say.Flaps, Words.Number(FlapDeg, 0)));

    /// <summary>From the assessment's name for it, such as <c>test-point:release-wheel@75kt,flap10</c>; null when it is done on the ground.</summary>
    public static CardPoint? Of(string test, Airframe airframe)
    {
        var reference = airframe.Reference;
        if (test.Split(':', '@') is not ["test-point", var manoeuvre, var conditions] || !Wire.TryRead<Manoeuvre>(manoeuvre, out var known)) return null;
        var words = conditions.Split(',');
        double? Figure(string prefix) => words.Where(word => word.StartsWith(prefix, StringComparison.Ordinal)).Select(word => Number(word[prefix.Length..])).FirstOrDefault();
        return Number(words[0].Replace("kt", "", StringComparison.Ordinal)) is not { } casKt ? null
            : new(known, casKt, reference.PressureAltitudeFt, Figure("power") ?? reference.PowerPercent, Figure("flap") ?? 0, words.Contains("last-input-left-and-right"));
    }

    static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
}
