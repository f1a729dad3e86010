using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Rigging.Web.Paper;

/// <summary>
/// A signature: what is signed for, the full text that was shown above it, and by whom. With <see cref="How"/> it was signed in the ledger
/// ("signed in the ledger, entry 14"); without, a line is left for ink.
/// </summary>
public sealed record Signature(string For, string Statement, string Name, string Certificate, string When, string? How = null) : Block
{
    internal override void Set(Galley galley)
    {
        const double pad = 8, lineForInk = 30;
        var (body, small) = (Galley.LineHeight(galley.Body), Galley.LineHeight(galley.Small));
        var column = (galley.Width - 4 * pad) / 3;
        (string Label, string Text)[] cells = [(Say.Name, Name), (Say.Certificate, Certificate), (How is null ? Say.Date : Say.Signed, When)];
        var texts = cells.Select(cell => galley.Lines(cell.Text, Typeface.Strong, galley.Body, column)).ToList();
        var how = galley.Lines(How ?? Say.Signature, Typeface.Text, galley.Small, galley.Width - 2 * pad);
        var block = pad + small + texts.Max(lines => lines.Count) * body + 4 + (How is null ? lineForInk : 0) + how.Count * small + pad;

        galley.Y += 4;
        var statement = galley.Lines(Statement, Typeface.Text, galley.Body, galley.Width);
        galley.Need((statement.Count + 1) * body + 12 + block);
        galley.Read(PdfBlockLevelElementTag.Heading2, () => galley.Line(For, Typeface.Strong, galley.Body + 1.5, galley.Left, galley.Y));
        galley.Y += body + 4;
        new Paragraph(Statement).Set(galley);
        galley.Need(block);

        var top = galley.Y;
        galley.Unread(() =>
        {
            galley.Ink.DrawRectangle(new XPen(XColors.Black, 1.25), galley.Left, top, galley.Width, block);
            for (var i = 1; i < 3; i++)
                galley.Ink.DrawLine(new XPen(XColors.Gray, 0.5), galley.Left + i * (column + pad) + pad / 2, top + pad, galley.Left + i * (column + pad) + pad / 2, top + pad + small + texts.Max(lines => lines.Count) * body);
        });
        for (var i = 0; i < cells.Length; i++)
        {
            var (x, y, lines, label) = (galley.Left + pad + i * (column + pad), top + pad, texts[i], cells[i].Label);
            galley.Read(PdfBlockLevelElementTag.Paragraph, () =>
            {
                galley.Line(label, Typeface.Text, galley.Small, x, y, XBrushes.DimGray);
                for (var l = 0; l < lines.Count; l++) galley.Line(lines[l], Typeface.Strong, galley.Body, x, y + small + l * body);
            });
        }
        galley.Y = top + pad + small + texts.Max(lines => lines.Count) * body + 4;
        if (How is null)
        {
            galley.Y += lineForInk;
            galley.Unread(() => galley.Ink.DrawLine(new XPen(XColors.Black, 0.75), galley.Left + pad, galley.Y - 2, galley.Left + galley.Width - pad, galley.Y - 2));
        }
        foreach (var line in how)
        {
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Text, galley.Small, galley.Left + pad, galley.Y));
            galley.Y += small;
        }
        galley.Y = top + block + 12;
    }
}
