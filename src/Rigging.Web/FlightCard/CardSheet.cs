using NodaTime;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using Rigging.Mechanics.Contract;
using Rigging.Web.Look;
using Rigging.Web.Paper;

namespace Rigging.Web.FlightCard;

/// <summary>The card on paper for the kneeboard: half letter or A5, boxes to write in.</summary>
static class CardSheet
{
    public static Sheet Of(Card card, Stock stock, ZonedDateTime printed) => new(
        card.Title, card.File.School.Name, Gaps.Fill(Texts.SquawkS, card.File.Number, card.File.Aircraft.Registration), card.File.HeadHash, printed, [.. Blocks(card)], stock);

    static IEnumerable<Block> Blocks(Card card)
    {
        foreach (var reason in card.NotNow) yield return new Paper.Caution(reason, Say.NotToBeFlownNow);
        if (card.InDoubt)
        {
            yield return new Paragraph(card.Why, Strong: true);
            yield break;
        }
        yield return new Caution(string.Join('\n', card.Cautions.Select(line => $"– {line}")), Say.BeforeYouGo);
        if (card.Disturbed.Count > 0)
        {
            yield return new Heading(Say.ExactlyWhatWasDisturbed);
            yield return new Paragraph(string.Join("; ", card.Disturbed), Strong: true);
            yield return new Paragraph(string.Join(' ', card.Look));
        }
        foreach (var limit in card.Limits) yield return new Paragraph(limit, Small: true);
        yield return new Boxes(Say.Day, [[new(Say.Date, 1.3), new(Say.AirSmoothLightRough, 2), new("OAT °C", 1)], .. Load(card)]);
        yield return new Paragraph(card.Why, Small: true);
        foreach (var (point, number) in card.Points.Select((point, index) => (point, index + 1)))
            yield return new PointBox(number, point);
        if (card.IsCheck)
            yield return new Boxes(Say.StallsAndFlapsAgainstBaseline, [[new(Say.CleanStallWingDegrees, 1), new(Say.FlapStallWingDegrees, 1)], [new(Say.EachFlapSettingFlown, 1)]]);
        yield return new RestOfThePage(Say.HowItFlewInYourWords);
    }

    static IEnumerable<IReadOnlyList<Box>> Load(Card card)
    {
        if (card.Airframe is not { } airframe) yield break;
        yield return [.. airframe.Tanks.Select(tank => new Box(Gaps.Fill(Say.FuelStartDipped, tank.Name), 1)), .. airframe.Tanks.Select(tank => new Box(Gaps.Fill(Say.End, tank.Name), 0.6))];
        yield return [.. airframe.Seats.Select(seat => new Box(Gaps.Fill(Say.SeatWeight, seat.Name), 1)), .. (airframe.Baggage ?? []).Select(place => new Box(Gaps.Fill(Say.Baggage, place.Name), 1))];
    }

    sealed record Box(string Label, double Share);

    /// <summary>Labelled boxes in rows, high enough for a pencil in the air.</summary>
    sealed record Boxes(string Head, IReadOnlyList<IReadOnlyList<Box>> Rows) : Block
    {
        internal override void Set(Galley galley)
        {
            const double tall = 27;
            var head = Galley.LineHeight(galley.Body);
            galley.Need(head + Rows.Count * tall + 8);
            galley.Read(PdfBlockLevelElementTag.Heading2, () => galley.Line(Head, Typeface.Strong, galley.Body, galley.Left, galley.Y));
            galley.Y += head + 2;
            foreach (var row in Rows)
            {
                Row(galley, row, galley.Y, tall);
                galley.Y += tall;
            }
            galley.Y += 8;
        }

        public static void Row(Galley galley, IReadOnlyList<Box> row, double top, double tall)
        {
            var all = row.Sum(box => box.Share);
            var x = galley.Left;
            foreach (var box in row)
            {
                var wide = galley.Width * box.Share / all;
                var left = x;
                galley.Unread(() => galley.Ink.DrawRectangle(new XPen(XColors.Black, 0.75), left, top, wide, tall));
                if (box.Label.Length > 0)
                    galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(galley.Lines(box.Label, Typeface.Text, galley.Small, wide - 4)[0], Typeface.Text, galley.Small, left + 3, top + 1, XBrushes.DimGray));
                x += wide;
            }
        }
    }

    /// <summary>Lines to write on, down to the foot of the page.</summary>
    sealed record RestOfThePage(string Head) : Block
    {
        internal override void Set(Galley galley)
        {
            const double tall = 23;
            const int least = 2;
            var head = Galley.LineHeight(galley.Body) + 2;
            galley.Need(head + least * tall);
            galley.Read(PdfBlockLevelElementTag.Heading2, () => galley.Line(Head, Typeface.Strong, galley.Body, galley.Left, galley.Y));
            for (galley.Y += head; galley.Y + tall <= galley.Bottom; galley.Y += tall) Boxes.Row(galley, [new("", 1)], galley.Y, tall);
        }
    }

    /// <summary>One point: what to hold and let go, and where to write what was read.</summary>
    sealed record PointBox(int Number, CardPoint Point) : Block
    {
        internal override void Set(Galley galley)
        {
            const double tall = 25;
            var (body, small) = (Galley.LineHeight(galley.Body), Galley.LineHeight(galley.Small));
            var hold = galley.Lines(Point.Hold, Typeface.Text, galley.Body, galley.Width - 8);
            var rows = Point.Manoeuvre == Manoeuvre.ReleaseAll ? 3 : Point.Timed ? 2 : 1;
            galley.Need(2 * body + hold.Count * body + small + rows * tall + 14);
            var top = galley.Y;
            galley.Read(PdfBlockLevelElementTag.Heading2, () => galley.Line($"{Number}  {Point.Title}", Typeface.Strong, galley.Body + 1, galley.Left, galley.Y));
            galley.Y += body + 2;
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(Point.Where, Typeface.Figures, galley.Body, galley.Left, galley.Y));
            galley.Y += body;
            foreach (var line in hold)
            {
                galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Text, galley.Body, galley.Left, galley.Y));
                galley.Y += body;
            }
            galley.Y += 2;
            if (Point.Timed)
            {
                foreach (var side in CardReadings.Sides)
                {
                    Boxes.Row(galley, [new(Gaps.Fill(Say.LastTurnTo, CardReadings.WordOf(side)), 1.15), .. Enumerable.Range(1, Card.Repeats).Select(repeat => new Box(Gaps.Fill(Say.SBankWing, repeat), 1))], galley.Y, tall);
                    galley.Y += tall;
                }
                if (Point.Manoeuvre == Manoeuvre.ReleaseAll) Boxes.Row(galley, [new(Say.BallBeforeReleaseWidthsSide, 1), new(Say.HeadingChange, 1)], galley.Y, tall);
                else galley.Y -= tall;
            }
            else
            {
                Boxes.Row(galley, Point.Manoeuvre == Manoeuvre.BalanceFuel ? [new(Say.FuelLeftWhenLevel, 1), new(Say.FuelRightWhenLevel, 1)]
                    : [new(Say.BallWidthsSide, 1), new(Say.HeadingDriftIn30S, 1), new(Point.Manoeuvre == Manoeuvre.HoldStraight ? Say.WheelFoot : Say.WheelSide, 1)], galley.Y, tall);
            }
            galley.Y += tall + 8;
        }
    }
}
