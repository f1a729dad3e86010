using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using Rigging.Web.Drawings;
using Rigging.Web.Paper;
using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace Rigging.Web.Tests.Paper;

public sealed class SheetTests
{
    static List<string> Pages(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(page => Regex.Replace(ContentOrderTextExtractor.GetText(page), @"\s+", " "))];
    }

    static string Text(params Block[] blocks) => string.Join(" ", Pages(SampleSheet.Record(blocks: blocks).ToPdf()));

    [Theory, InlineData(Stock.A4), InlineData(Stock.Letter), InlineData(Stock.A5), InlineData(Stock.HalfLetter)]
    public void Every_page_says_which_it_is_and_what_it_belongs_to(Stock stock)
    {
        var pages = Pages(SampleSheet.Record(stock).ToPdf());

        Assert.True(pages.Count > 1);
        for (var i = 0; i < pages.Count; i++)
        {
            Assert.Contains($"page {i + 1} of {pages.Count}", pages[i], StringComparison.Ordinal);
            Assert.Contains("Squawk S-12 · Q-ABCD", pages[i], StringComparison.Ordinal);
            Assert.Contains(SampleSheet.Hash, pages[i], StringComparison.Ordinal);
            Assert.Contains("Invented Flying School", pages[i], StringComparison.Ordinal);
        }
    }

    /// <summary>ISO 216 and the inch sizes, in points of 1/72 inch; the library rounds A sizes to whole points.</summary>
    [Theory, InlineData(Stock.A4, 595, 842), InlineData(Stock.Letter, 612, 792), InlineData(Stock.A5, 420, 595), InlineData(Stock.HalfLetter, 396, 612)]
    public void Paper_has_its_true_size(Stock stock, double width, double height)
    {
        using var document = PdfDocument.Open(SampleSheet.Record(stock).ToPdf());

        Assert.Equal((width, height), (document.GetPage(1).Width, document.GetPage(1).Height));
    }

    /// <summary>Whatever stands above it, line by line down the page: a heading goes over to the next page with what it heads.</summary>
    [Theory, InlineData(Stock.A4), InlineData(Stock.HalfLetter)]
    public void A_heading_never_stands_alone_at_the_foot_of_a_page(Stock stock)
    {
        Block[] headed =
        [
            new Signature("Signature of the certifier", "The work described above is approved for return to service.", "Edda Lindgard", "Q-M-1126", "2026-11-05", "Signed in the ledger, entry 21"),
            new Figure(EccentricView.Draw(new(Rigging.Mechanics.Contract.Side.Left, -30, 0, 90, 6, null, null), Rigging.Mechanics.Adjusters.Face.Rear)),
            new Paragraph("Nothing else."),
        ];
        var parted = 0;
        foreach (var block in headed)
            foreach (var lines in Enumerable.Range(8, 17).Select(third => 3 * third))
            {
                var pages = Pages((SampleSheet.Record(stock, [new Paragraph(string.Join('\n', Enumerable.Repeat("line", lines + 1))), new Heading("The heading above it"), block])).ToPdf());
                var page = Assert.Single(pages, page => page.Contains("The heading above it", StringComparison.Ordinal));
                Assert.Contains(block switch { Signature => "Edda Lindgard", Figure => "Move the eccentric", _ => "Nothing else." }, page, StringComparison.Ordinal);
                if (pages.Count > 1) parted++;
            }
        Assert.True(parted > 10, $"{parted} sheets of two pages");
    }

    [Fact]
    public void Everything_written_can_be_read_again()
    {
        var text = string.Join(" ", Pages(SampleSheet.Record().ToPdf()));

        foreach (var words in (string[])[
            "Maintenance record entry: wing rigging", "Q-ABCD, st2, serial 0417", "3412.6 h", "section 57-20, revision 4", "Left eccentric, front bushing", "−15°", "1.49°",
            "252 lbf·in", "2026-09-30", "Caution", "cable tension and the travel", "Dora Fenn", "IA 0000217", "Signed in the ledger, entry 14", "Approval for return to service", "Ciro Vane", "airframe rating",
            "Turn the eccentric ½ flat clockwise: trailing edge down", "left wing, rear face, looking forward"])
            Assert.Contains(words, text, StringComparison.Ordinal);
    }

    [Theory, InlineData(false), InlineData(true)]
    public void The_trades_characters_survive(bool figures) =>
        Assert.Contains("0.11° ± 0.03° ≤ ½ ¼ ¾ − → × · ≥ ″ µ é ø ł", Text(new Facts([("Set", "0.11° ± 0.03° ≤ ½ ¼ ¾ − → × · ≥ ″ µ é ø ł")], figures)), StringComparison.Ordinal);

    /// <summary>A name in a script we have no face for must not vanish from a record.</summary>
    [Fact]
    public void A_character_without_a_face_is_printed_as_its_number() =>
        Assert.Contains("[U+6797] and [U+1F6E9]", Text(new Paragraph("林 and 🛩")), StringComparison.Ordinal);

    [Fact]
    public void Accents_typed_apart_are_joined() => Assert.Contains("Renée", Text(new Paragraph("Rene\u0301e")), StringComparison.Ordinal);

    [Fact]
    public void Line_breaks_are_kept_and_control_characters_become_spaces() => Assert.Contains("one two three", Text(new Paragraph("one\r\ntwo\u0007three")), StringComparison.Ordinal);

    [Fact]
    public void A_long_table_repeats_its_head_and_loses_no_row()
    {
        var rows = Enumerable.Range(1, 120).Select(i => (IReadOnlyList<string>)[$"step-{i:000}", i % 7 == 0 ? "a longer remark that has to be wrapped over more than one line in its cell, so the row grows" : "as found"]).ToList();
        var pages = Pages(SampleSheet.Record(blocks: [new Table([new("Step head"), new("Remark head", 2)], rows)]).ToPdf());

        Assert.True(pages.Count >= 3);
        Assert.All(pages, page => Assert.Contains("Step head", page, StringComparison.Ordinal));
        Assert.Equal(Enumerable.Range(1, 120).Select(i => $"step-{i:000}"), Regex.Matches(string.Join(" ", pages), @"step-\d{3}").Select(m => m.Value));
    }

    /// <summary>Longer than any page: it runs on instead of falling off the foot.</summary>
    [Fact]
    public void What_is_taller_than_a_page_runs_on_to_the_next()
    {
        var words = string.Join(" ", Enumerable.Range(1, 3000).Select(i => $"w{i}"));
        foreach (var block in (Block[])[new Paragraph(words), new Caution(words), new Facts([("Story", words)]), new Table([new("a"), new("b")], [["x", words]]), new Signature("For", words, "Name", "Kind", "Day")])
        {
            var seen = Regex.Matches(Text(block), @"\bw(\d+)\b").Select(m => m.Value).ToList();
            Assert.Equal(3000, seen.Distinct().Count());
        }
    }

    [Fact]
    public void A_word_wider_than_the_page_is_cut_and_no_part_of_it_is_lost()
    {
        var word = string.Concat(Enumerable.Range(100, 120).Select(i => $"{i}-"));
        using var document = PdfDocument.Open(SampleSheet.Record(blocks: [new Paragraph(word)]).ToPdf());
        var page = document.GetPage(1);

        Assert.Contains(word, string.Concat(page.Letters.Select(letter => letter.Value)), StringComparison.Ordinal);
        Assert.All(page.Letters, letter => Assert.True(letter.EndBaseLine.X <= page.Width - 50));
    }

    [Fact]
    public void No_mark_falls_off_the_page() => Assert.All(Enum.GetValues<Stock>(), stock =>
    {
        using var document = PdfDocument.Open(SampleSheet.Record(stock).ToPdf());
        foreach (var page in document.GetPages())
            Assert.All(page.Letters, letter => Assert.True(letter.StartBaseLine.X >= 20 && letter.EndBaseLine.X <= page.Width - 20 && letter.StartBaseLine.Y >= 10, $"{stock}: {letter.Value} at {letter.StartBaseLine}"));
    });

    /// <summary>The figures in a drawing are text on paper too, in the same places as on screen.</summary>
    [Fact]
    public void A_drawing_on_paper_carries_the_same_lettering_as_on_screen()
    {
        var drawing = AeroplaneView.FromRate(-0.8, -1.1, -0.5, 0.3);
        var text = Text(new Figure(drawing));

        Assert.All(drawing.Marks.OfType<Lettering>(), mark => Assert.Contains(mark.Text, text, StringComparison.Ordinal));
    }

    /// <summary>RFC 1950: a stream ends with the Adler-32 of what it holds; readers that check would refuse the file otherwise.</summary>
    [Fact]
    public void Compressed_streams_are_complete()
    {
        var pdf = SampleSheet.Record().ToPdf();
        var text = Encoding.Latin1.GetString(pdf);
        var streams = Regex.Matches(text, @"/FlateDecode.*?stream\r?\n", RegexOptions.Singleline).ToList();

        Assert.True(streams.Count > 3);
        foreach (var start in streams)
        {
            var at = start.Index + start.Length;
            var packed = pdf[at..text.IndexOf("endstream", at, StringComparison.Ordinal)].AsSpan().TrimEnd("\r\n"u8).ToArray();
            using var plain = new MemoryStream();
            using (var zlib = new ZLibStream(new MemoryStream(packed), CompressionMode.Decompress)) zlib.CopyTo(plain);
            Assert.Equal(Adler32(plain.ToArray()), System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(packed.AsSpan(packed.Length - 4)));
        }
    }

    [Fact]
    public void The_file_is_tagged_for_reading_aloud() => Assert.Contains("/StructTreeRoot", Encoding.Latin1.GetString(SampleSheet.Record().ToPdf()), StringComparison.Ordinal);

    static uint Adler32(byte[] bytes)
    {
        uint a = 1, b = 0;
        foreach (var x in bytes) (a, b) = ((a + x) % 65521, (b + (a + x) % 65521) % 65521);
        return b << 16 | a;
    }
}
