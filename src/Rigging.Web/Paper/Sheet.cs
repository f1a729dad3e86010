using NodaTime;
using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Rigging.Web.Paper;

/// <summary>A paper's size: records on A4 or letter, what goes into the cockpit on A5 or half letter, what is stuck into a logbook on A6.</summary>
public enum Stock { A4, Letter, A5, HalfLetter, A6 }

/// <summary>
/// One printed document. The subject names squawk and aircraft ("Squawk S-12 · Q-ABCD"); subject and hash stand on every page,
/// so that a loose page still says what it belongs to. The hash is the head of the ledger the print was made from; null for what is not made from one.
/// </summary>
public sealed record Sheet(string Title, string School, string Subject, string? Hash, ZonedDateTime PrintedAt, IReadOnlyList<Block> Blocks, Stock Stock = Stock.A4)
{
    public byte[] ToPdf() => Press.Print(this);
}

/// <summary>One part of a sheet, set from top to bottom.</summary>
public abstract record Block
{
    internal abstract void Set(Galley galley);

    /// <summary>What of it must stand on one page with the heading above it, points.</summary>
    internal virtual double Least(Galley galley) => 4 * Galley.LineHeight(galley.Body);
}

static class StockSizes
{
    // The library's own half letter is called Statement; A6 it does not know.
    public static void Cut(this Stock stock, PdfPage page)
    {
        if (stock == Stock.A6) (page.Width, page.Height) = (XUnit.FromMillimeter(105), XUnit.FromMillimeter(148));
        else page.Size = stock switch
        {
            Stock.A4 => PageSize.A4,
            Stock.Letter => PageSize.Letter,
            Stock.A5 => PageSize.A5,
            _ => PageSize.Statement,
        };
    }

    /// <summary>Sizes of type and the margin, points.</summary>
    public static (double Title, double Body, double Small, double Margin) Measures(this Stock stock) => stock switch
    {
        Stock.A6 => (11, 7.5, 6, 26),
        Stock.A5 or Stock.HalfLetter => (17, 8.5, 6.75, 32),
        _ => (17, 9.5, 7.5, 54),
    };
}
