using NodaTime;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using Rigging.Web.Look;
using Rigging.Web.Paper;

namespace Rigging.Web.Report;

/// <summary>What hangs in the cockpit: the aircraft's code, and two small ones to cut out.</summary>
static class PlacardSheet
{
    public static Sheet Of(Lately aircraft, string address, bool asksForPin, Stock stock, ZonedDateTime printed) => new(
        Gaps.Fill(Say.HowDoesThisOneFly, aircraft.Registration), aircraft.School.Name, aircraft.Registration, null, printed,
        [
            new Code(address, 0.5, Say.ScanItWithYourPhonesCamera),
            new Paragraph(Say.BeforeFlightWhatWasDisturbed, Strong: true),
            new Paragraph(Say.AfterFlightSayHow),
            new Paragraph(asksForPin ? Say.NoAccountNeededYour : Say.SignInWithYourOwnAccount),
            new Labels(address, aircraft.Registration),
        ],
        stock);

    sealed record Code(string Address, double Share, string Caption) : Block
    {
        internal override void Set(Galley galley)
        {
            var edge = galley.Width * Share;
            galley.Need(edge + 4 * Galley.LineHeight(galley.Body));
            var box = new XRect(galley.Left + (galley.Width - edge) / 2, galley.Y, edge, edge);
            galley.Pictured(Gaps.Fill(Say.QRCodeFor, Address), box, () => PdfInk.Draw(galley.Ink, QrCode.Of(Address), box));
            galley.Y += edge + 4;
            foreach (var (text, face) in (ReadOnlySpan<(string, Typeface)>)[(Caption, Typeface.Strong), (Address, Typeface.Figures)])
                foreach (var line in galley.Lines(text, face, face == Typeface.Figures ? galley.Small : galley.Body, galley.Width))
                {
                    var size = face == Typeface.Figures ? galley.Small : galley.Body;
                    galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, face, size, galley.Left + galley.Width / 2, galley.Y, format: XStringFormats.TopCenter));
                    galley.Y += Galley.LineHeight(size);
                }
            galley.Y += 10;
        }
    }

    /// <summary>Two labels of 35 mm, for the panel and the key.</summary>
    sealed record Labels(string Address, string Registration) : Block
    {
        internal override void Set(Galley galley)
        {
            const double code = 82, wide = 150, tall = 98;
            galley.Need(tall + 8);
            var top = galley.Y + 4;
            for (var i = 0; i < 2; i++)
            {
                var left = galley.Left + i * (wide + 12);
                galley.Unread(() => galley.Ink.DrawRectangle(new XPen(XColors.Gray, 0.5) { DashStyle = XDashStyle.Dash }, left, top, wide, tall));
                var box = new XRect(left + 4, top + 4, code, code);
                galley.Pictured(Gaps.Fill(Say.QRCodeFor, Address), box, () => PdfInk.Draw(galley.Ink, QrCode.Of(Address), box));
                galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(Registration, Typeface.Figures, 11, left + code + 8, top + 12));
                foreach (var (line, index) in galley.Lines(Say.HowDoesItFlyDisturbed, Typeface.Text, 7.5, wide - code - 12).Select((line, index) => (line, index)))
                    galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Text, 7.5, left + code + 8, top + 30 + index * Galley.LineHeight(7.5)));
            }
            galley.Y = top + tall + 8;
        }
    }
}
