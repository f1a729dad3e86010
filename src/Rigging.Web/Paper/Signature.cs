using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Rigging.Web.Paper;

/// <summary>
/// A signature: what is signed for, the full text that was shown above it, and by whom. With <see cref="How"/> it was signed in the ledger
/// ("signed in the ledger, entry 14"); without, a line is left for ink.
/// </summary>
public sealed record Signature(string For, string Statement, string Name, string Certificate, string When, string? How = null) : Block
{
    const double Pad = 8, LineForInk = 30;

    internal override double Least(Galley galley) => 4 + Whole(galley, Measured(galley));

    static double Whole(Galley galley, Measures set) => (set.Statement.Count + 1) * Galley.LineHeight(galley.Body) + 12 + set.Block;

    /// <param name="Block">Height of the frame, points.</param>
    sealed record Measures(double Column, IReadOnlyList<IReadOnlyList<string>> Texts, IReadOnlyList<string> How, IReadOnlyList<string> Statement, double Block);

    Measures Measured(Galley galley)
    {
        var (body, small) = (Galley.LineHeight(galley.Body), Galley.LineHeight(galley.Small));
        var column = (galley.Width - 4 * Pad) / 3;
        List<IReadOnlyList<string>> texts = [.. Cells.Select(cell => galley.Lines(cell.Text, Typeface.Strong, galley.Body, column))];
        var how = galley.Lines(How ?? Say.Signature, Typeface.Text, galley.Small, galley.Width - 2 * Pad);
        return new(column, texts, how, galley.Lines(Statement, Typeface.Text, galley.Body, galley.Width),
            Pad + small + texts.Max(lines => lines.Count) * body + 4 + (How is null ? LineForInk : 0) + how.Count * small + Pad);
    }

    (string Label, string Text)[] Cells => [(Say.Name, Name), (Say.Certificate, Certificate), (How is null ? Say.Date : Say.Signed, When)];

    internal override void Set(Galley galley)
    {
        var (body, small) = (Galley.LineHeight(galley.Body), Galley.LineHeight(galley.Small));
        var cells = Cells;
        var measures = Measured(galley);
        var (column, texts, how, _, block) = measures;

        galley.Y += 4;
        galley.Need(Whole(galley, measures));
        galley.Read(PdfBlockLevelElementTag.Heading2, () => galley.Line(For, Typeface.Strong, galley.Body + 1.5, galley.Left, galley.Y));
        galley.Y += body + 4;
        new Paragraph(Statement).Set(galley);
        galley.Need(block);

        var top = galley.Y;
        galley.Unread(() =>
        {
            galley.Ink.DrawRectangle(new XPen(XColors.Black, 1.25), galley.Left, top, galley.Width, block);
            for (var i = 1; i < 3; i++)
                galley.Ink.DrawLine(new XPen(XColors.Gray, 0.5), galley.Left + i * (column + Pad) + Pad / 2, top + Pad, galley.Left + i * (column + Pad) + Pad / 2, top + Pad + small + texts.Max(lines => lines.Count) * body);
        });
        for (var i = 0; i < cells.Length; i++)
        {
            var (x, y, lines, label) = (galley.Left + Pad + i * (column + Pad), top + Pad, texts[i], cells[i].Label);
            galley.Read(PdfBlockLevelElementTag.Paragraph, () =>
            {
                galley.Line(label, Typeface.Text, galley.Small, x, y, XBrushes.DimGray);
                for (var l = 0; l < lines.Count; l++) galley.Line(lines[l], Typeface.Strong, galley.Body, x, y + small + l * body);
            });
        }
        galley.Y = top + Pad + small + texts.Max(lines => lines.Count) * body + 4;
        if (How is null)
        {
            galley.Y += LineForInk;
            galley.Unread(() => galley.Ink.DrawLine(new XPen(XColors.Black, 0.75), galley.Left + Pad, galley.Y - 2, galley.Left + galley.Width - Pad, galley.Y - 2));
        }
        foreach (var line in how)
        {
            galley.Read(PdfBlockLevelElementTag.Paragraph, () => galley.Line(line, Typeface.Text, galley.Small, galley.Left + Pad, galley.Y));
            galley.Y += small;
        }
        galley.Y = top + block + 12;
    }
}
