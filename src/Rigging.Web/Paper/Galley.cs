using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;
using Rigging.Web.Look;

namespace Rigging.Web.Paper;

/// <summary>The page being set: where the next line goes, and the few strokes that blocks are made of. Points; y runs down.</summary>
sealed class Galley : IDisposable
{
    const double Hairline = 0.5, Rule = 1.25;

    readonly Sheet sheet;
    readonly int pages;
    readonly PdfDocument document = new();
    readonly UAManager tags;
    readonly Dictionary<(Typeface, double), XFont> fonts = [];
    XGraphics? ink;
    double pageHeight;

    /// <param name="sheet">What is set.</param>
    /// <param name="pages">How many pages there will be; 0 while they are only counted.</param>
    public Galley(Sheet sheet, int pages)
    {
        (this.sheet, this.pages) = (sheet, pages);
        document.Info.Title = sheet.Title;
        document.Info.Author = sheet.School;
        document.Info.Subject = sheet.Subject;
        document.Info.Creator = "Rigging";
        document.Info.CreationDate = sheet.PrintedAt.ToInstant().ToDateTimeUtc();
        tags = UAManager.ForDocument(document);
        tags.SetDocumentLanguage(Texts.LanguageCode);
        NextPage();
    }

    public PdfDocument Document => document;
    public XGraphics Ink => ink!;
    public double Left { get; private set; }
    public double Width { get; private set; }
    public double Y { get; set; }
    public double Top { get; private set; }
    public double Bottom { get; private set; }

    /// <summary>What a heading must leave room for under it, so that it does not stand alone at the foot of a page.</summary>
    public double LeastOfNext { get; set; }
    public double Title => sheet.Stock.Measures().Title;
    public double Body => sheet.Stock.Measures().Body;
    public double Small => sheet.Stock.Measures().Small;

    /// <summary>Turns to a new page unless so much room is left; what never fits a page is not waited for.</summary>
    public void Need(double height)
    {
        if (Y + height > Bottom && Y > Top && height <= Bottom - Top) NextPage();
    }

    public void NextPage()
    {
        ink?.Dispose();
        var page = document.AddPage();
        sheet.Stock.Cut(page);
        ink = XGraphics.FromPdfPage(page);
        var margin = sheet.Stock.Measures().Margin;
        (Left, Width, pageHeight) = (margin, page.Width.Point - 2 * margin, page.Height.Point);
        (Top, Bottom) = (margin + 16, pageHeight - margin - 14);
        Unread(Furniture);
        Y = Top;
    }

    public XFont Font(Typeface face, double size) => fonts.TryGetValue((face, size), out var font) ? font : fonts[(face, size)] = PlexFonts.Font(face, size);

    public static double LineHeight(double size) => size * 1.38;

    /// <summary>The text in lines no wider than so much; a word that is wider by itself is cut.</summary>
    public IReadOnlyList<string> Lines(string text, Typeface face, double size, double width)
    {
        var font = Font(face, size);
        double Wide(string s) => Ink.MeasureString(s, font).Width;
        List<string> lines = [];
        foreach (var paragraph in Legible.In(face, text).Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' '))
            {
                var rest = word;
                if (line.Length > 0 && Wide(line + " " + rest) > width) { lines.Add(line); line = ""; }
                else if (line.Length > 0) { line += " " + rest; continue; }
                for (var fits = rest.Length; Wide(rest) > width && rest.Length > 1; fits = rest.Length)
                {
                    while (fits > 1 && Wide(rest[..fits]) > width) fits--;
                    lines.Add(rest[..fits]);
                    rest = rest[fits..];
                }
                line = rest;
            }
            lines.Add(line);
        }
        return lines;
    }

    /// <summary>One line with its top at y.</summary>
    public void Line(string text, Typeface face, double size, double x, double y, XBrush? brush = null, XStringFormat? format = null) =>
        Ink.DrawString(Legible.In(face, text), Font(face, size), brush ?? XBrushes.Black, new XPoint(x, y + (LineHeight(size) - size * 1.3) / 2), format ?? XStringFormats.TopLeft);

    public void HorizontalRule(double y, bool firm, double? from = null, double? to = null) =>
        Unread(() => Ink.DrawLine(new XPen(firm ? XColors.Black : XColor.FromArgb(0x99, 0x99, 0x99), firm ? Rule : Hairline), from ?? Left, y, to ?? Left + Width, y));

    /// <summary>Marks what is read out; every string must lie in such an element.</summary>
    public void Read(PdfBlockLevelElementTag tag, Action draw)
    {
        tags.StructureBuilder.BeginElement(tag);
        draw();
        tags.StructureBuilder.End();
    }

    public void Pictured(string words, XRect box, Action draw)
    {
        tags.StructureBuilder.BeginElement(PdfIllustrationElementTag.Figure, words, box);
        draw();
        tags.StructureBuilder.End();
    }

    /// <summary>Decoration and page furniture, passed over when the page is read out.</summary>
    public void Unread(Action draw)
    {
        tags.StructureBuilder.BeginArtifact();
        draw();
        tags.StructureBuilder.End();
    }

    void Furniture()
    {
        var (right, small) = (Left + Width, Small);
        Line(sheet.School, Typeface.Strong, small, Left, Top - 28);
        Line(sheet.Subject, Typeface.Strong, small, right, Top - 28, format: XStringFormats.TopRight);
        Ink.DrawLine(new XPen(XColors.Black, Rule), Left, Top - 14, right, Top - 14);
        var foot = Bottom + 10;
        Ink.DrawLine(new XPen(XColors.Black, Hairline), Left, foot, right, foot);
        Line(Gaps.Fill(Say.PageOf, document.PageCount, pages), Typeface.Strong, small, right, foot + 3, format: XStringFormats.TopRight);
        if (sheet.Hash is not null) Line(Gaps.Fill(Say.Ledger, sheet.Hash), Typeface.Figures, Math.Min(small - 1, 6), Left, foot + 3);
        Line(Gaps.Fill(Say.Printed, $"{sheet.PrintedAt:uuuu-MM-dd HH:mm}", sheet.PrintedAt.Zone.Id), Typeface.Text, small - 1, Left, foot + 12);
    }

    public void Dispose() => ink?.Dispose();
}
