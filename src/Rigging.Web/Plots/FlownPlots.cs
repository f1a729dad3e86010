using Rigging.Mechanics.Contract;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Drawings;
using Rigging.Web.Look;

namespace Rigging.Web.Plots;

/// <summary>What was read in the air against what is to be expected: bank against time, and how fast it rolls against how fast it flies.</summary>
static class FlownPlots
{
    static string Bank => Say.BankRightWingDown;
    static string Rate => Say.RollDegPerSRightWing;

    /// <summary>One manoeuvre that was let run: which, and the speed most of its readings were taken at.</summary>
    sealed record Ran(TestPoint Point, IReadOnlyList<(TestPoint Point, Reading Reading, double Seconds, double Deg)> Readings);

    /// <summary>Both, as far as there are readings for them; with what was before the last work beside it once there was one.</summary>
    public static IReadOnlyList<Chart> Of(Ledger ledger, AirframeOnFile onFile) =>
        FlownEvidence.Now(ledger, onFile) is { } now ? Of(now, FlownEvidence.BeforeWork(ledger, onFile)) : [];

    /// <summary>The same from evidence that was weighed already.</summary>
    public static IReadOnlyList<Chart> Of(FlownEvidence now, FlownEvidence? before) =>
        [.. ((Chart?[])[BankAgainstTime(now, before), RateAgainstSpeed(now, before)]).OfType<Chart>()];

    /// <param name="now">As the aircraft stands.</param>
    /// <param name="before">As it stood before the last work; null when there was none.</param>
    /// <returns>Null when nobody timed a bank.</returns>
    public static Chart? BankAgainstTime(FlownEvidence now, FlownEvidence? before = null)
    {
        var (flown, earlier) = (MostTimed(now), before is null ? null : MostTimed(before));
        // Before anybody has flown it again: what is expected of the flight that was flown before.
        if ((flown ?? earlier) is not { } ran) return null;
        var longest = Math.Clamp(1.2 * ran.Readings.Concat(earlier?.Readings ?? []).Max(reading => reading.Seconds), 10, 40);
        List<Curve> curves = [];
        List<Dots> dots = [];
        if (before is not null)
        {
            curves.Add(Banks(before, Telling.Earlier, Say.BeforeWork, ran.Point, longest));
            if (earlier is not null) dots.Add(Timed(before, Telling.Earlier, Say.ReadBeforeWork, earlier, ran.Point));
        }
        curves.Add(Banks(now, Telling.Now, before is null ? Say.Expected : Say.AfterWork, ran.Point, longest));
        if (flown is not null) dots.Add(Timed(now, Telling.Now, before is null ? Say.Read : Say.ReadAfterWork, flown, ran.Point));
        var at = curves[^1].Points[^1];
        return new Chart(Gaps.Fill(Say.BankAfterLettingGo, Numerals.Short(ran.Point.CasKt)), Say.SecondsAfterLettingGo, Bank,
            Gaps.Fill(Say.SquaresAreReadingsWithTheirError, Words.Capital(Words.Of(ran.Point.Manoeuvre)), Numerals.Short(at.X), Directions.Expected(at.Mean, at.Low, at.High, Directions.Bank), Compared(curves, Directions.Bank)) + AsRead(dots, Directions.Bank, $"{Directions.Space}s"),
            curves, dots, [], []);
    }

    /// <returns>Null when no roll was read as a number.</returns>
    public static Chart? RateAgainstSpeed(FlownEvidence now, FlownEvidence? before = null)
    {
        var timed = TimedReadings(now).ToList();
        if (timed.Count == 0 && before is not null) timed = [.. TimedReadings(before)];
        if (timed.Count == 0) return null;
        var seconds = timed.Select(reading => reading.Seconds).Order().ElementAt(timed.Count / 2);
        var of = timed.MinBy(reading => Math.Abs(reading.Point.CasKt - now.Airframe.Reference.CasKt)).Point;
        var (slow, fast) = Speeds(now, before);
        Curve Rates(FlownEvidence flown, Telling telling, string name) => new(telling, name,
            [.. Enumerable.Range(0, 13).Select(i => slow + (fast - slow) * i / 12).Select(speed => flown.Outlook.Expected(of with { CasKt = speed }, new BankAfter(seconds, 0)) is { } bank
                ? ((double, double, double, double)?)(speed, bank.Low / seconds, bank.Mean / seconds, bank.High / seconds) : null).OfType<(double, double, double, double)>()]);
        Dots Read(FlownEvidence flown, Telling telling, string name) => new(telling, name,
            [.. TimedReadings(flown).Where(r => r.Point.Manoeuvre == of.Manoeuvre).Select(r => Drawn(flown, r.Point.CasKt, of with { CasKt = r.Point.CasKt }, r, r.Seconds))]);
        List<Curve> curves = [];
        List<Dots> dots = [];
        if (before is not null)
        {
            curves.Add(Rates(before, Telling.Earlier, Say.BeforeWork));
            if (Read(before, Telling.Earlier, Say.ReadBeforeWork) is { Points.Count: > 0 } read) dots.Add(read);
        }
        curves.Add(Rates(now, Telling.Now, before is null ? Say.Expected : Say.AfterWork));
        if (Read(now, Telling.Now, before is null ? Say.Read : Say.ReadAfterWork) is { Points.Count: > 0 } lately) dots.Add(lately);
        IReadOnlyList<Level> levels = now.Airframe.Limits is { AcceptableRollTendencyDegPerS: var limit }
            ? [new(limit, Gaps.Fill(Say.Limit, Numerals.Number(limit, 2))), new(-limit, Gaps.Fill(Say.Limit, Numerals.Number(limit, 2)))] : [];
        return new Chart(Gaps.Fill(Say.RollOverFirstS, Numerals.Short(seconds)), Say.IndicatedAirspeedKt, Rate,
            Gaps.Fill(Say.WithDaysFuelAndSeatsInItWing, Words.Capital(Words.Of(of.Manoeuvre)), Compared(curves, Directions.RollRate)) + AsRead(dots, Directions.RollRate, $"{Directions.Space}kt"),
            curves, dots, levels, []);
    }

    static string Compared(List<Curve> curves, Func<double, string> words) => curves.Count < 2 ? ""
        : Gaps.Fill(Say.BeforeWorkAtRightHand, Ends(curves[0], words), Ends(curves[1], words));

    static string Ends(Curve curve, Func<double, string> words) => curve.Points[^1] is var at ? Directions.Short(at.Mean, at.Low, at.High, words) : "";

    static Curve Banks(FlownEvidence flown, Telling telling, string name, TestPoint point, double longest) => new(telling, name,
        [.. Enumerable.Range(0, 21).Select(i => longest * i / 20).Select(t => t == 0 ? (0, 0, 0, 0)
            : flown.Outlook.Expected(point, new BankAfter(t, 0)) is { } bank ? (t, bank.Low, bank.Mean, bank.High) : ((double, double, double, double)?)null).OfType<(double, double, double, double)>()]);

    static Dots Timed(FlownEvidence flown, Telling telling, string name, Ran ran, TestPoint of) =>
        new(telling, name, [.. ran.Readings.Select(r => Drawn(flown, r.Seconds, of, r, 1))]);

    /// <summary>
    /// A reading as the flight that is drawn would have had it: what was read, and what its own speed, load, height and power are worth less. A line and its readings
    /// belong together only so; where that moves the dot, it says what was read.
    /// </summary>
    /// <param name="per">Seconds over which the bank is spread, or 1.</param>
    static Dot Drawn(FlownEvidence flown, double x, TestPoint drawn, (TestPoint Point, Reading Reading, double Seconds, double Deg) read, double per)
    {
        var bank = new BankAfter(read.Seconds, 0);
        var shift = flown.Outlook.Expected(drawn with { LastInput = read.Point.LastInput }, bank) is { } there && flown.Outlook.Expected(read.Point, bank) is { } here ? there.Mean - here.Mean : 0;
        var give = flown.Outlook.ReadWithin(read.Point, read.Reading) / per;
        return Math.Abs(shift) < SeenDeg ? Dot.GiveOrTake(x, read.Deg / per, give) : Dot.GiveOrTake(x, (read.Deg + shift) / per, give, new(read.Deg / per, Flown(drawn, read.Point)));
    }

    /// <summary>Nearer than this nobody sees a difference in the plot.</summary>
    const double SeenDeg = 0.05;

    static string Flown(TestPoint drawn, TestPoint point) => string.Join(", ", (IEnumerable<string>)
    [
        .. drawn.Manoeuvre == point.Manoeuvre ? [] : (string[])[Words.Of(point.Manoeuvre)],
        .. Math.Abs(drawn.CasKt - point.CasKt) < 0.5 ? [] : (string[])[Gaps.Fill(Say.AtKt, Numerals.Short(point.CasKt))],
        .. Same(drawn.Load, point.Load) ? [] : (string[])[Say.WithAnotherLoad],
        .. Math.Abs(drawn.PressureAltitudeFt - point.PressureAltitudeFt) < 100 && Math.Abs((drawn.PowerPercent ?? 0) - (point.PowerPercent ?? 0)) < 1 ? [] : (string[])[Say.AtAnotherHeightOrPower],
    ]);

    static bool Same(Load one, Load other) => Directions.Load(one) == Directions.Load(other);

    /// <summary>What was read where a dot is drawn otherwise: a plot on paper has no table beside it.</summary>
    static string AsRead(List<Dots> dots, Func<double, string> words, string unit) =>
        dots.SelectMany(of => of.Points).Where(dot => dot.Read is not null).ToList() is { Count: > 0 } moved
            ? Gaps.Fill(Say.OpenMarksWereReadElsewhere, string.Join("; ", moved.Select(dot => $"{Numerals.Short(dot.X)}{unit}: {words(dot.Read!.Value)}{(dot.Read.Flown.Length > 0 ? $" ({dot.Read.Flown})" : "")}")))
            : "";

    static Ran? MostTimed(FlownEvidence flown) => TimedReadings(flown)
        .GroupBy(reading => (reading.Point.Manoeuvre, Speed: Math.Round(reading.Point.CasKt / 5)))
        .OrderByDescending(group => group.Count()).ThenBy(group => Math.Abs(group.First().Point.CasKt - flown.Airframe.Reference.CasKt))
        .Select(group => new Ran(group.First().Point, [.. group])).FirstOrDefault();

    // As the aircraft stood: what was flown before something was turned is evidence, and belongs to the other line.
    static IEnumerable<(TestPoint Point, Reading Reading, double Seconds, double Deg)> TimedReadings(FlownEvidence flown) =>
        from point in flown.Request.TestPoints
        where point.MovedSince is null or []
        where point.Manoeuvre is Manoeuvre.ReleaseAll or Manoeuvre.ReleaseWheel or Manoeuvre.HoldNeutral && Math.Abs(point.FlapDeg) < 0.5
        from reading in point.Readings
        let read = reading switch
        {
            BankAfter { Seconds: > 0 } bank => (bank.Seconds, bank.Deg),
            TimeToBank { Seconds: > 0 } time => (time.Seconds, time.Deg),
            _ => ((double, double)?)null,
        }
        where read is not null
        select (point, reading, read.Value.Item1, read.Value.Item2);

    /// <summary>A little beyond what was flown, inside what the airframe may fly.</summary>
    static (double Slow, double Fast) Speeds(FlownEvidence now, FlownEvidence? before)
    {
        double[] flown = [now.Airframe.Reference.CasKt, .. TimedReadings(now).Concat(before is null ? [] : TimedReadings(before)).Select(r => r.Point.CasKt)];
        var (slow, fast) = (flown.Min() - 15, flown.Max() + 15);
        return now.Airframe.SpeedsKt is { } limits ? (Math.Max(slow, limits.StallClean * 1.2), Math.Min(fast, limits.MaxStructuralCruise)) : (Math.Max(slow, 40), fast);
    }
}
