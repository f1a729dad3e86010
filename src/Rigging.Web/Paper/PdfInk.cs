using PdfSharp.Drawing;
using Rigging.Web.Drawings;
using Rigging.Web.Look;

namespace Rigging.Web.Paper;

/// <summary>A drawing on paper: the same marks as on screen. Black ink is enough: as found is dashed, what moves is heavier.</summary>
static class PdfInk
{
    public static void Draw(XGraphics ink, Drawing drawing, XRect box)
    {
        var scale = box.Width / drawing.Width;
        var state = ink.Save();
        ink.TranslateTransform(box.X, box.Y);
        ink.ScaleTransform(scale);
        foreach (var mark in drawing.Marks) Draw(ink, mark);
        ink.Restore(state);
    }

    static void Draw(XGraphics ink, Mark mark)
    {
        switch (mark)
        {
            case Outline outline:
                var path = new XGraphicsPath();
                path.AddLines([.. outline.Points.Select(At)]);
                if (outline.Closed) path.CloseFigure();
                if (outline.Fill is { } fill) ink.DrawPath(Brush(fill), path);
                if (outline.Pen is { } pen) ink.DrawPath(Of(pen), path);
                break;
            case Arc arc when arc.SweepDeg != 0:
                var side = 2 * arc.Radius;
                if (Math.Abs(arc.SweepDeg) >= 360) ink.DrawEllipse(Of(arc.Pen), arc.Centre.X - arc.Radius, arc.Centre.Y - arc.Radius, side, side);
                else ink.DrawArc(Of(arc.Pen), arc.Centre.X - arc.Radius, arc.Centre.Y - arc.Radius, side, side, arc.StartDeg, arc.SweepDeg);
                break;
            case Lettering text:
                var face = (text.Figures, text.Strong) switch { (true, true) => Typeface.StrongFigures, (true, _) => Typeface.Figures, (_, true) => Typeface.Strong, _ => Typeface.Text };
                ink.DrawString(Legible.In(face, text.Text), PlexFonts.Font(face, text.Size), new XSolidBrush(Colour(text.Role)), At(text.At), text.Align switch
                {
                    Align.Middle => XStringFormats.BaseLineCenter,
                    Align.End => XStringFormats.BaseLineRight,
                    _ => XStringFormats.BaseLineLeft,
                });
                break;
        }
    }

    static XPoint At(Point point) => new(point.X, point.Y);

    static XPen Of(Pen pen) => new(Colour(pen.Role), pen.Width)
    {
        LineJoin = XLineJoin.Round,
        LineCap = pen.Dashed ? XLineCap.Flat : XLineCap.Round,
        DashStyle = pen.Dashed ? XDashStyle.Custom : XDashStyle.Solid,
        // The library counts dashes in line widths.
        DashPattern = pen.Dashed ? [5 / pen.Width, 4 / pen.Width] : [],
    };

    // No transparency on paper: a band is printed as its own light tint.
    static XSolidBrush Brush(Fill fill)
    {
        var colour = Colour(fill.Role);
        byte Tint(byte part) => (byte)Math.Round(255 - (255 - part) * fill.Opacity);
        return new XSolidBrush(XColor.FromArgb(Tint(colour.R), Tint(colour.G), Tint(colour.B)));
    }

    static XColor Colour(Role role) => role switch
    {
        Role.Ink => XColors.Black,
        Role.Muted => XColor.FromArgb(0x44, 0x44, 0x44),
        Role.Accent => Hex(Palette.Light.Accent),
        Role.Caution => Hex(Palette.Light.Caution),
        _ => XColors.White,
    };

    static XColor Hex(string colour) => XColor.FromArgb(Convert.ToInt32(colour[1..3], 16), Convert.ToInt32(colour[3..5], 16), Convert.ToInt32(colour[5..7], 16));
}
