using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Rigging.Web.Paper;

/// <summary>A column: its head, its share of the width against the others, and whether it holds figures (set monospaced, to the right).</summary>
public sealed record Column(string Head, double Share = 1, bool Figures = false);

/// <summary>A table ruled like a parts list; its head is repeated on every page.</summary>
public sealed record Table(IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<string>> Rows) : Block
{
    internal override void Set(Galley galley) => new Ruled(galley, Columns, HasHead: true).Set(Rows);
}

/// <summary>Labels and their values, one to a line.</summary>
public sealed record Facts(IReadOnlyList<(string Label, string Value)> Rows, bool Figures = false) : Block
{
    internal override void Set(Galley galley) =>
        new Ruled(galley, [new("", 1), new("", 2.2)], HasHead: false, ValueFace: Figures ? Typeface.Figures : Typeface.Text).Set([.. Rows.Select(row => (IReadOnlyList<string>)[row.Label, row.Value])]);
}

sealed record Ruled(Galley Page, IReadOnlyList<Column> Columns, bool HasHead, Typeface ValueFace = Typeface.Text)
{
    const double Gap = 16, Pad = 2.5;

    double Height => Galley.LineHeight(Page.Body);

    double[] Widths()
    {
        var all = Columns.Sum(column => column.Share);
        return [.. Columns.Select(column => (Page.Width - Gap * (Columns.Count - 1)) * column.Share / all)];
    }

    Typeface FaceOf(int column) => Columns[column].Figures ? Typeface.Figures : column == Columns.Count - 1 ? ValueFace : Typeface.Text;

    public void Set(IReadOnlyList<IReadOnlyList<string>> rows)
    {
        Page.Need(3 * Height + 4 * Pad);
        Head();
        foreach (var row in rows)
        {
            var widths = Widths();
            var cells = row.Select((text, i) => Page.Lines(text, FaceOf(i), Page.Body, widths[i])).ToList();
            var tall = cells.Max(lines => lines.Count);
            if (Page.Y + tall * Height + 2 * Pad > Page.Bottom && tall * Height + 2 * Pad < Page.Bottom - Page.Top - 40) Turn();
            for (var at = 0; at < tall;)
            {
                var fits = (int)((Page.Bottom - Page.Y - 2 * Pad) / Height);
                if (fits < 1) { Turn(); continue; }
                Row([.. cells.Select(lines => (IReadOnlyList<string>)[.. lines.Skip(at).Take(fits)])], widths, PdfBlockLevelElementTag.TableDataCell);
                at += fits;
                if (at < tall) Turn();
            }
            Page.HorizontalRule(Page.Y, firm: false);
        }
        Page.HorizontalRule(Page.Y, firm: true);
        Page.Y += 10;
    }

    void Turn()
    {
        Page.HorizontalRule(Page.Y, firm: true);
        Page.NextPage();
        Head();
    }

    void Head()
    {
        Page.HorizontalRule(Page.Y, firm: true);
        if (!HasHead) return;
        var widths = Widths();
        Row([.. Columns.Select((column, i) => Page.Lines(column.Head, Typeface.Strong, Page.Small, widths[i]))], widths, PdfBlockLevelElementTag.TableHeaderCell);
        Page.Unread(() => Page.Ink.DrawLine(new XPen(XColors.Black, 0.5), Page.Left, Page.Y, Page.Left + Page.Width, Page.Y));
    }

    void Row(IReadOnlyList<IReadOnlyList<string>> cells, double[] widths, PdfBlockLevelElementTag tag)
    {
        var head = tag == PdfBlockLevelElementTag.TableHeaderCell;
        var (size, height) = head ? (Page.Small, Galley.LineHeight(Page.Small)) : (Page.Body, Height);
        var x = Page.Left;
        for (var i = 0; i < cells.Count; i++)
        {
            var (lines, face, toTheRight) = (cells[i], head ? Typeface.Strong : FaceOf(i), Columns[i].Figures);
            var edge = toTheRight ? x + widths[i] : x;
            Page.Read(tag, () =>
            {
                for (var l = 0; l < lines.Count; l++)
                    Page.Line(lines[l], face, size, edge, Page.Y + Pad + l * height, format: toTheRight ? XStringFormats.TopRight : XStringFormats.TopLeft);
            });
            x += widths[i] + Gap;
        }
        Page.Y += cells.Max(lines => lines.Count) * height + 2 * Pad;
    }
}
