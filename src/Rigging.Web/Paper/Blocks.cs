using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using Rigging.Web.Look;

namespace Rigging.Web.Paper;

sealed record Title(string Text) : Block
{
    internal override void Set(Galley galley)
    {
        var size = galley.Title;
        foreach (var line in galley.Lines(Text, Typeface.Strong, size, galley.Width))
        {
            galley.Read(PdfBlockLevelElementTag.Heading1, () => galley.Line(line, Typeface.Strong, size, galley.Left, galley.Y));
            galley.Y += Galley.LineHeight(size);
        }
        galley.Y += 6;
    }
}

/// <summary>Words to be read from across the hangar.</summary>
public sealed record Shout(string Text, double Size = 44) : Block
{
    internal override void Set(Galley galley)
    {
        foreach (var line in galley.Lines(Text, Typeface.Strong, Size, galley.Width))
        {
            galley.Need(Galley.LineHeight(Size));
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Strong, Size, galley.Left, galley.Y));
            galley.Y += Galley.LineHeight(Size);
        }
    }
}

/// <summary>A heading that stays with what follows it.</summary>
public sealed record Heading(string Text) : Block
{
    internal override void Set(Galley galley)
    {
        var size = galley.Body + 1.5;
        galley.Y += galley.Y > galley.Top ? 8 : 0;
        var lines = galley.Lines(Text, Typeface.Strong, size, galley.Width);
        galley.Need(lines.Count * Galley.LineHeight(size) + 3 + galley.LeastOfNext);
        foreach (var line in lines)
        {
            galley.Read(PdfBlockLevelElementTag.Heading2, () => galley.Line(line, Typeface.Strong, size, galley.Left, galley.Y));
            galley.Y += Galley.LineHeight(size);
        }
        galley.Y += 3;
    }
}

/// <summary>Running text; its line breaks are kept.</summary>
public sealed record Paragraph(string Text, bool Small = false, bool Strong = false) : Block
{
    internal override void Set(Galley galley)
    {
        var (size, face) = (Small ? galley.Small : galley.Body, Strong ? Typeface.Strong : Typeface.Text);
        var height = Galley.LineHeight(size);
        foreach (var line in galley.Lines(Text, face, size, galley.Width))
        {
            if (galley.Y + height > galley.Bottom) galley.NextPage();
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, face, size, galley.Left, galley.Y));
            galley.Y += height;
        }
        galley.Y += 6;
    }
}

/// <summary>What happens, then what to do, in a firm frame with its word.</summary>
public sealed record Caution(string Text, string? Word = null) : Block
{
    internal override void Set(Galley galley)
    {
        const double pad = 8;
        var height = Galley.LineHeight(galley.Body);
        var lines = galley.Lines(Text, Typeface.Text, galley.Body, galley.Width - 2 * pad);
        galley.Need((lines.Count + 1) * height + 2 * pad);
        for (var at = 0; at < lines.Count;)
        {
            if (galley.Y + 2 * height + 2 * pad > galley.Bottom) galley.NextPage();
            var fits = Math.Max(1, (int)((galley.Bottom - galley.Y - 2 * pad) / height) - 1);
            var part = lines.Skip(at).Take(fits).ToList();
            var top = galley.Y;
            galley.Unread(() => galley.Ink.DrawRectangle(new XPen(XColors.Black, 1.25), galley.Left, top, galley.Width, (part.Count + 1) * height + 2 * pad));
            galley.Y += pad;
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(Word ?? Say.Caution, Typeface.Strong, galley.Body, galley.Left + pad, galley.Y));
            foreach (var line in part)
            {
                galley.Y += height;
                galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Text, galley.Body, galley.Left + pad, galley.Y));
            }
            galley.Y += height + pad;
            at += part.Count;
        }
        galley.Y += 8;
    }
}

/// <summary>A drawing at a share of the page's width, with what it shows and where the eye is.</summary>
public sealed record Figure(Drawings.Drawing Drawing, double Share = 0.62) : Block
{
    // Lettering of 13 units stays at 7.5 points.
    const double LeastScale = 0.58;

    internal override double Least(Galley galley) => Measured(galley).Whole;

    (double Width, double Height, IReadOnlyList<string> Caption, double Whole) Measured(Galley galley)
    {
        var width = Math.Min(galley.Width, Math.Max(galley.Width * Share, LeastScale * Drawing.Width));
        var height = width * Drawing.Height / Drawing.Width;
        var caption = galley.Lines($"{Drawing.Title} ({Drawing.Viewpoint})", Typeface.Text, galley.Small, galley.Width);
        return (width, height, caption, height + 12 + caption.Count * Galley.LineHeight(galley.Small));
    }

    internal override void Set(Galley galley)
    {
        var (width, height, lines, whole) = Measured(galley);
        galley.Need(whole);
        var box = new XRect(galley.Left, galley.Y, width, height);
        galley.Pictured(Gaps.Fill(Say.Seen, Drawing.Title, Drawing.Viewpoint), box, () => PdfInk.Draw(galley.Ink, Drawing, box));
        galley.Y += height + 4;
        foreach (var line in lines)
        {
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Text, galley.Small, galley.Left, galley.Y));
            galley.Y += Galley.LineHeight(galley.Small);
        }
        galley.Y += 8;
    }
}

/// <summary>A plot across the page.</summary>
public sealed record Plotted(Plots.Chart Chart, double Share = 0.86) : Block
{
    internal override void Set(Galley galley)
    {
        var width = galley.Width * Share;
        var height = width * Plots.ChartInk.Shape;
        var lines = galley.Lines($"{Chart.Title}. {Chart.Says}", Typeface.Text, galley.Small, galley.Width);
        galley.Need(height + 12 + lines.Count * Galley.LineHeight(galley.Small));
        var box = new XRect(galley.Left, galley.Y, width, height);
        using var bytes = new MemoryStream(Plots.ChartInk.Png(Chart));
        using var picture = XImage.FromStream(bytes);
        galley.Pictured($"{Chart.Title}. {Chart.Says}", box, () => galley.Ink.DrawImage(picture, box));
        galley.Y += height + 4;
        foreach (var line in lines)
        {
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Text, galley.Small, galley.Left, galley.Y));
            galley.Y += Galley.LineHeight(galley.Small);
        }
        galley.Y += 8;
    }
}
