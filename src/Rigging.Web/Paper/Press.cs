using System.IO.Compression;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;

namespace Rigging.Web.Paper;

/// <summary>Sets a sheet twice (once to count its pages) and makes the file.</summary>
static class Press
{
    public static byte[] Print(Sheet sheet)
    {
        int pages;
        using (var count = Set(sheet, 0)) pages = count.Document.PageCount;
        using var galley = Set(sheet, pages);
        return Pack(galley.Document);
    }

    static Galley Set(Sheet sheet, int pages)
    {
        var galley = new Galley(sheet, pages);
        new Title(sheet.Title).Set(galley);
        for (var i = 0; i < sheet.Blocks.Count; i++)
        {
            galley.LeastOfNext = i + 1 < sheet.Blocks.Count ? sheet.Blocks[i + 1].Least(galley) : 0;
            sheet.Blocks[i].Set(galley);
        }
        galley.Ink.Dispose();
        return galley;
    }

    /// <summary>PDFsharp 6.2.4 ends its compressed streams without their last block and checksum; so it writes plainly and we compress.</summary>
    static byte[] Pack(PdfDocument set)
    {
        using var plain = new MemoryStream();
        WriteUncompressed(set, plain);
        plain.Position = 0;
        using var document = PdfReader.Open(plain, PdfDocumentOpenMode.Modify);
        foreach (var part in document.Internals.GetAllObjects().OfType<PdfDictionary>())
        {
            if (part.Stream is not { } stream || part.Elements.ContainsKey("/Filter") || part.Elements.GetName("/Type") == "/Metadata") continue;
            using var packed = new MemoryStream();
            using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true)) zlib.Write(stream.Value);
            stream.Value = packed.ToArray();
            part.Elements.SetName("/Filter", "/FlateDecode");
        }
        using var file = new MemoryStream();
        WriteUncompressed(document, file);
        return file.ToArray();
    }

    static void WriteUncompressed(PdfDocument document, MemoryStream to)
    {
        document.Options.NoCompression = true;
        document.Options.CompressContentStreams = false;
        document.Save(to, closeStream: false);
    }
}
