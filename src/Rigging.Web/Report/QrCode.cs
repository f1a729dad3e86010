using QRCoder;
using Rigging.Web.Drawings;
using Rigging.Web.Look;

namespace Rigging.Web.Report;

/// <summary>An address as a QR code, quiet zone included.</summary>
static class QrCode
{
    /// <summary>Four modules of white all round, as the code's standard asks (ISO/IEC 18004).</summary>
    const int Quiet = 4;

    public static Drawing Of(string address)
    {
        // A quarter of it may be scratched or in shadow and it still reads.
        using var code = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.Q);
        var rows = code.ModuleMatrix;
        var edge = rows.Count;
        List<Mark> marks = [new Outline([new(0, 0), new(edge, 0), new(edge, edge), new(0, edge)], null, Fill.Paper)];
        for (var y = Quiet; y < edge - Quiet; y++)
            for (var x = 0; x < edge; x++)
            {
                if (!rows[y][x]) continue;
                var from = x;
                while (x < edge && rows[y][x]) x++;
                // A hair taller than a row: no white line between two rows on paper.
                marks.Add(new Outline([new(from, y), new(x, y), new(x, y + 1.02), new(from, y + 1.02)], null, new Fill(Role.Ink)));
            }
        return new(edge, edge, Gaps.Fill(Say.QRCodeFor, address), Say.StraightOn, marks);
    }
}
