using Rigging.Mechanics.Contract;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.FlightCard;

/// <summary>What was written on the card, carried into the draft of the flight's own form: the repeats as one reading for each side, and every one of them in the remarks.</summary>
sealed class CardReadings(TypedFields card, Typed typed)
{
    public static readonly IReadOnlyList<string> Sides = ["left", "right"];

    public static string WordOf(string side) => side == "left" ? Texts.LeftInText : Texts.RightInText;

    /// <summary>The name of a repeat's field on the card: point, side of the last turn, which repeat.</summary>
    public static string At(int point, string side, int repeat, string field) => $"c{point}.{side}{repeat}.{field}";

    public static string At(int point, string field) => $"c{point}.{field}";

    /// <param name="Seconds">Mean of the repeats.</param>
    /// <param name="BankDeg">Right wing down positive: the mean rate times the mean time.</param>
    sealed record Timed(double Seconds, double BankDeg, string Words);

    /// <summary>Adds to an evaluation flight's draft, behind what stands there already.</summary>
    public void IntoEvaluation(TypedFields flight, IReadOnlyList<CardPoint> points)
    {
        List<string> words = [];
        var next = Enumerable.Range(1, 99).First(number => !flight.Begins($"p{number}."));
        foreach (var (point, number) in points.Select((point, index) => (point, index + 1)))
        {
            if (!point.Timed)
            {
                if (Held(number)) HeldPoint(flight, point, number, next++);
                continue;
            }
            var timed = Sides.Select(side => (Side: side, Mean: Mean(number, [side]))).Where(side => side.Mean is not null).ToList();
            // Friction shows in the difference between the sides; where only one was flown there is one point.
            foreach (var (side, mean) in timed)
            {
                Common(flight, point, next);
                flight[$"p{next}.lastInput"] = side;
                (flight[$"p{next}.bankDeg"], flight[$"p{next}.bankSide"], flight[$"p{next}.bankSeconds"]) = (Size(mean!.BankDeg), SideOf(mean.BankDeg, "none"), Plain(mean.Seconds));
                if (point.Manoeuvre == Manoeuvre.ReleaseAll) Copy(flight, number, next, "ball", "ballSide");
                words.Add($"{point.Title}, {point.Where}, last turn {side}: {mean.Words}.");
                next++;
            }
        }
        Remark(flight, words);
    }

    /// <summary>Fills a check flight's draft.</summary>
    public void IntoCheckFlight(TypedFields flight, IReadOnlyList<CardPoint> points)
    {
        List<string> words = [];
        var next = 1;
        foreach (var (point, number) in points.Select((point, index) => (point, index + 1)))
        {
            if (point.Timed)
            {
                if (Mean(number, Sides) is not { } mean) continue;
                (flight[$"release{next}.casKt"], flight[$"release{next}.seconds"], flight[$"release{next}.bankDeg"], flight[$"release{next}.side"]) =
                    (Plain(point.CasKt), Plain(mean.Seconds), Size(mean.BankDeg), SideOf(mean.BankDeg, "level"));
                words.Add($"{point.Title}, {point.Where}: {mean.Words}.");
                next++;
            }
            else if (card.Text(At(number, "ball")) is not null || card.Text(At(number, "ballSide")) is not null)
            {
                (flight["held.casKt"], flight["held.widths"], flight["held.side"]) = (Plain(point.CasKt), card[At(number, "ball")], card[At(number, "ballSide")] is "none" ? "centre" : card[At(number, "ballSide")]);
            }
        }
        if (points.Count > 0) (flight["pressureAltitudeFt"], flight["powerPercent"], flight["method"]) = (Plain(points[0].AltitudeFt), Plain(points[0].PowerPercent), "stopwatch-horizon");
        if (card.Text("air") is { } air) flight["air"] = air;
        if (card.Text("oatC") is { } oat) flight["oatC"] = oat;
        (flight["crew"], flight["secondCrewDuty"]) = card.Ticked("second") ? ("second", flight.Text("secondCrewDuty") ?? "times and writes down the readings") : (flight["crew"], flight["secondCrewDuty"]);
        Remark(flight, words);
    }

    bool Held(int number) => ((string[])["ball", "ballSide", "heading30", "headingSide", "wheelDeg", "wheelSide"]).Any(field => card.Text(At(number, field)) is not null);

    void HeldPoint(TypedFields flight, CardPoint point, int number, int at)
    {
        Common(flight, point, at);
        Copy(flight, number, at, "ball", "ballSide", "wheelDeg", "wheelSide", "headingSide");
        if (typed.Number(card[At(number, "heading30")], At(number, "heading30"), Gaps.Fill(Say.PointHeadingDrift, number), Say.DegreesIn30S) is { } drift)
            flight[$"p{at}.headingRate"] = Plain(Math.Round(drift / 30, 2));
    }

    void Common(TypedFields flight, CardPoint point, int at)
    {
        flight[$"p{at}.manoeuvre"] = Wire.Word(point.Manoeuvre);
        (flight[$"p{at}.casKt"], flight[$"p{at}.pressureAltitudeFt"], flight[$"p{at}.powerPercent"], flight[$"p{at}.flapDeg"]) =
            (Plain(point.CasKt), Plain(point.AltitudeFt), Plain(point.PowerPercent), Plain(point.FlapDeg));
        if (card.Text("oatC") is { } oat) flight[$"p{at}.oatC"] = oat;
        if (card.Text("air") is { } air and not "smooth") flight[$"p{at}.air"] = air;
    }

    void Copy(TypedFields flight, int number, int at, params string[] fields)
    {
        foreach (var field in fields)
            if (card.Text(At(number, field)) is { } text) flight[$"p{at}.{field}"] = text;
    }

    Timed? Mean(int number, IReadOnlyList<string> sides)
    {
        List<(double Seconds, double BankDeg)> repeats = [];
        foreach (var side in sides)
            for (var repeat = 1; repeat <= Card.Repeats; repeat++)
                if (Repeat(number, side, repeat) is { } read) repeats.Add(read);
        if (repeats.Count == 0) return null;
        var seconds = repeats.Average(read => read.Seconds);
        return new(Math.Round(seconds, 1), Math.Round(repeats.Average(read => read.BankDeg / read.Seconds) * seconds, 1),
            string.Join("; ", repeats.Select(read => $"{Directions.Bank(read.BankDeg)} in {Words.Number(read.Seconds, 1)}{Directions.Space}s")));
    }

    (double Seconds, double BankDeg)? Repeat(int number, string side, int repeat)
    {
        var (s, deg, wing) = (At(number, side, repeat, "s"), At(number, side, repeat, "deg"), card.Text(At(number, side, repeat, "wing")));
        var name = Gaps.Fill(Say.PointLastTurn, number, WordOf(side), repeat);
        var (seconds, bank) = (typed.Number(card[s], s, name, Say.SecondsInText), typed.Number(card[deg], deg, name, Say.Degrees));
        if (seconds is null && bank is null && wing is null) return null;
        if (seconds is not > 0) { if (card.Text(s) is null || seconds is not null) typed.Wrong("value-missing", Gaps.Fill(Say.HowManySecondsWanted, name), s); return null; }
        if (wing == "level") return (seconds.Value, 0);
        if (bank is not (> 0 and <= FlyingLimits.MostBankDeg)) { typed.Wrong("value-missing", Gaps.Fill(Say.HowManyDegreesOfBank, name), deg); return null; }
        if (wing is not ("left" or "right")) { typed.Wrong("side-missing", Gaps.Fill(Say.WhichWingWentDown, name), At(number, side, repeat, "wing")); return null; }
        return (seconds.Value, wing == "right" ? bank.Value : -bank.Value);
    }

    static void Remark(TypedFields flight, List<string> words)
    {
        if (words.Count > 0) flight["remarks"] = string.Join('\n', ((string?[])[flight.Text("remarks"), .. words]).OfType<string>());
    }

    static string Size(double signed) => Plain(Math.Abs(signed));

    static string SideOf(double signed, string none) => signed switch { < 0 => "left", > 0 => "right", _ => none };

    static string Plain(double value) => value.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
}
