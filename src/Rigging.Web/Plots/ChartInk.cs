using System.Globalization;
using System.Security;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using ScottPlot;
using ScottPlot.AxisPanels;
using SkiaSharp;
using Rigging.Web.Paper;

namespace Rigging.Web.Plots;

/// <summary>The picture a chart is drawn on, pixels. Letters are of one size on either, so that neither has to be shrunk to be looked at.</summary>
sealed record Canvas(string Name, int Width, int Height, int Days)
{
    public static readonly Canvas Broad = new("broad", 640, 340, Days: 5);

    /// <summary>For a phone held upright.</summary>
    public static readonly Canvas Narrow = new("narrow", 344, 320, Days: 2);
}

/// <summary>Draws a chart: as an SVG that takes its colours from the page, and as a picture for paper in black, grey and one colour.</summary>
static partial class ChartInk
{
    const float Body = 15, Small = 13;

    /// <summary>What each colour stands for. On screen they are names that the page's display fills in.</summary>
    sealed record Inks(Color Ink, Color Muted, Color Line, Color Accent, Color Caution, Color Paper);

    // Stand-ins that no drawing would use: replaced by the page's own colours.
    static readonly Inks Screen = new(new("#0A1B01"), new("#0A1B02"), new("#0A1B03"), new("#0A1B04"), new("#0A1B05"), new("#0A1B06"));
    static readonly (string StandIn, string Token)[] Tokens = [("#0A1B01", "ink"), ("#0A1B02", "muted"), ("#0A1B03", "grid"), ("#0A1B04", "accent"), ("#0A1B05", "caution"), ("#0A1B06", "surface")];
    static readonly Inks Print = new(Colors.Black, new("#444444"), new("#BBBBBB"), new(Look.Palette.Light.Accent), new(Look.Palette.Light.Caution), Colors.White);

    static ChartInk() => Fonts.FontResolvers.Insert(0, new Plex());

    /// <summary>Read out as its sentence; the letters are set in the page's own face.</summary>
    public static string Svg(Chart chart, Canvas? on = null)
    {
        var canvas = on ?? Canvas.Broad;
        string drawn;
        using (var plot = Drawn(chart, Screen, canvas)) drawn = plot.GetSvgXml(canvas.Width, canvas.Height);
        foreach (var (standIn, token) in Tokens) drawn = drawn.Replace(standIn, $"var(--{token})", StringComparison.OrdinalIgnoreCase);
        // Several plots on one page must not share names.
        var own = $"c{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(canvas.Name + chart.Title + chart.Says))[..4])}";
        drawn = Names().Replace(drawn, match => $"{match.Groups[1].Value}{own}{match.Groups[2].Value}");
        var root = string.Create(CultureInfo.InvariantCulture, $"<svg class=\"plot {canvas.Name}\" xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 {canvas.Width} {canvas.Height}\" role=\"img\" aria-label=\"{SecurityElement.Escape($"{chart.Title}. {chart.Says}")}\">");
        return Root().Replace(drawn[drawn.IndexOf("<svg", StringComparison.Ordinal)..], _ => root, 1);
    }

    /// <summary>At a size that prints sharp.</summary>
    public static byte[] Png(Chart chart)
    {
        using var plot = Drawn(chart, Print, Canvas.Broad);
        plot.ScaleFactor = 3;
        return plot.GetImageBytes(Canvas.Broad.Width * 3, Canvas.Broad.Height * 3, ImageFormat.Png);
    }

    /// <summary>Height over width.</summary>
    public static double Shape => (double)Canvas.Broad.Height / Canvas.Broad.Width;

    static Plot Drawn(Chart chart, Inks inks, Canvas canvas)
    {
        var plot = new Plot();
        plot.FigureBackground.Color = inks.Paper;
        plot.DataBackground.Color = inks.Paper;
        plot.Font.Set(Plex.Family);
        plot.Axes.Color(inks.Ink);
        plot.Grid.MajorLineColor = inks.Line;
        plot.Axes.Right.IsVisible = plot.Axes.Top.IsVisible = false;
        foreach (var (axis, label) in ((AxisBase, string)[])[((AxisBase)plot.Axes.Bottom, chart.Across), ((AxisBase)plot.Axes.Left, chart.Up)])
            Letter(axis, label);
        if (chart.Dates)
        {
            plot.Axes.Bottom.TickGenerator = Days(chart, canvas.Days);
            // Room for half of the last day's name.
            plot.Layout.Fixed(new PixelPadding(left: 62, right: 46, bottom: 56, top: 10));
        }
        else
        {
            plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { LabelFormatter = Drawings.Numerals.Short };
        }
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { LabelFormatter = Drawings.Numerals.Short };

        foreach (var curve in chart.Curves) Add(plot, curve, inks);
        foreach (var level in chart.Levels) Add(plot, level, inks);
        foreach (var upright in chart.Uprights) Add(plot, upright, inks);
        foreach (var dots in chart.Dots) Add(plot, dots, inks);
        plot.Add.HorizontalLine(0, 1, inks.Ink);
        Name(plot, chart, inks, canvas);
        return plot;
    }

    /// <summary>The first day on it and the day after the last; null where there is none.</summary>
    static (double First, double End)? DaysOf(Chart chart)
    {
        List<double> days = [.. chart.Dots.SelectMany(dots => dots.Points.Select(point => point.X)).Concat(chart.Uprights.Select(upright => upright.X)).Select(Math.Floor)];
        return days.Count == 0 ? null : (days.Min(), days.Max() + 1);
    }

    /// <summary>Whole days, written as everywhere else, no more than there is room for.</summary>
    static ScottPlot.TickGenerators.NumericManual Days(Chart chart, int most)
    {
        var ticks = new ScottPlot.TickGenerators.NumericManual();
        if (DaysOf(chart) is not (var first, var end)) return ticks;
        var step = Math.Max(1, Math.Ceiling((end - first) / (most - 1)));
        for (var day = first; day <= end; day += step) ticks.AddMajor(day, DateTime.FromOADate(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        return ticks;
    }

    static void Letter(AxisBase axis, string label)
    {
        axis.LabelText = label;
        axis.LabelFontSize = Body;
        axis.LabelBold = false;
        axis.TickLabelStyle.FontSize = Small;
    }

    static Color Of(Telling telling, Inks inks) => telling == Telling.Now ? inks.Accent : inks.Muted;

    static void Add(Plot plot, Curve curve, Inks inks)
    {
        var colour = Of(curve.Telling, inks);
        double[] xs = [.. curve.Points.Select(p => p.X)];
        var band = plot.Add.FillY(xs, [.. curve.Points.Select(p => p.Low)], [.. curve.Points.Select(p => p.High)]);
        band.FillStyle.Color = colour.WithAlpha(0.18);
        band.LineStyle.Width = 0;
        var line = plot.Add.ScatterLine(xs, [.. curve.Points.Select(p => p.Mean)]);
        line.Color = colour;
        line.LineWidth = curve.Telling == Telling.Now ? 3 : 2;
        line.LinePattern = curve.Telling == Telling.Now ? LinePattern.Solid : LinePattern.Dashed;
    }

    static void Add(Plot plot, Dots dots, Inks inks)
    {
        foreach (var dot in dots.Points)
        {
            if (dot.Within is not var (low, high)) continue;
            var bar = plot.Add.Line(dot.X, low, dot.X, high);
            bar.LineColor = Of(dots.Telling, inks);
            bar.LineWidth = 1.5f;
            bar.MarkerSize = 0;
        }
        Mark(plot, dots, inks, dots.Points.Where(dot => dot.Read is null), dots.Telling == Telling.Now ? MarkerShape.FilledSquare : MarkerShape.OpenCircle);
        Mark(plot, dots, inks, dots.Points.Where(dot => dot.Read is not null), dots.Telling == Telling.Now ? MarkerShape.FilledDiamond : MarkerShape.OpenDiamond);
    }

    static void Mark(Plot plot, Dots dots, Inks inks, IEnumerable<Dot> points, MarkerShape shape)
    {
        if (points.ToArray() is not { Length: > 0 } marked) return;
        var marks = plot.Add.ScatterPoints(marked.Select(p => p.X).ToArray(), marked.Select(p => p.Y).ToArray());
        marks.MarkerStyle.Shape = shape;
        marks.MarkerStyle.Size = 10;
        marks.MarkerStyle.FillColor = marks.MarkerStyle.OutlineColor = marks.MarkerStyle.LineColor = dots.Telling == Telling.Now ? inks.Accent : inks.Ink;
        marks.MarkerStyle.LineWidth = 2;
    }

    static void Add(Plot plot, Level level, Inks inks)
    {
        var line = plot.Add.HorizontalLine(level.Y, 2, inks.Caution, LinePattern.Dotted);
        line.EnableAutoscale = true;
    }

    static void Add(Plot plot, Upright upright, Inks inks) => plot.Add.VerticalLine(upright.X, 1.5f, inks.Ink, LinePattern.DenselyDashed);

    /// <summary>Names stand beside what they name, on no line and on no reading; nobody has to match a legend.</summary>
    static void Name(Plot plot, Chart chart, Inks inks, Canvas canvas)
    {
        plot.Axes.AutoScale();
        plot.Axes.Margins(0.06, 0.16);
        plot.Axes.AutoScale();
        // From the first day's beginning to the last one's end: both have their dates.
        if (chart.Dates && DaysOf(chart) is (var first, var end)) plot.Axes.SetLimitsX(first - (end - first) * 0.02, end + (end - first) * 0.02);
        var limits = plot.Axes.GetLimits();
        // Where things lie on the picture is known once it has been drawn.
        plot.RenderInMemory(canvas.Width, canvas.Height);
        var area = plot.LastRender.DataRect;
        (double X, double Y) At(double x, double y) => plot.GetPixel(new Coordinates(x, y)) is var pixel ? (pixel.X, pixel.Y) : default;
        var free = new FreePlace(new(area.Left + 2, area.Top + 2, area.Width - 4, area.Height - 4));
        foreach (var curve in chart.Curves) free.Line([.. curve.Points.Select(point => At(point.X, point.Mean))]);
        foreach (var y in chart.Levels.Select(level => level.Y).Append(0)) free.Line([At(limits.Left, y), At(limits.Right, y)]);
        foreach (var upright in chart.Uprights) free.Line([At(upright.X, limits.Bottom), At(upright.X, limits.Top)]);
        foreach (var dot in chart.Dots.SelectMany(dots => dots.Points))
        {
            var (across, down) = At(dot.X, dot.Y);
            free.Take(Box.About(across, down, 8));
            if (dot.Within is var (low, high)) free.Line([At(dot.X, low), At(dot.X, high)]);
        }

        void Write(string text, Color colour, Func<Box, IEnumerable<Box>> places)
        {
            if (free.Find(places(new(0, 0, Plex.WidthOf(text, Small), Small + 5))) is not { } box) return;
            var label = plot.Add.Text(text, plot.GetCoordinates(new Pixel(box.Left, box.Top)));
            label.LabelFontName = Plex.Family;
            label.LabelFontSize = Small;
            label.LabelFontColor = colour;
            label.LabelAlignment = Alignment.UpperLeft;
        }
        foreach (var upright in chart.Uprights) Write(upright.Name, inks.Ink, size => BesideUpright(size, At(upright.X, limits.Bottom), area));
        foreach (var curve in chart.Curves.Where(curve => curve.Points.Count > 0))
        {
            var under = chart.Curves.Any(other => other != curve && other.Points.Count > 0 && other.Points[^1].Mean > curve.Points[^1].Mean);
            Write(curve.Name, curve.Telling == Telling.Now ? inks.Accent : inks.Ink, size => AlongCurve(size, [.. curve.Points.Select(point => At(point.X, point.Mean))], under));
        }
        foreach (var level in chart.Levels) Write(level.Name, inks.Caution, size => AlongLevel(size, At(limits.Left, level.Y).Y, area, level.Y < 0));
        plot.Axes.SetLimits(limits);
    }

    /// <summary>Close to the line before far from it, at its right end before farther back, on the side away from the other curve before the near one.</summary>
    static IEnumerable<Box> AlongCurve(Box size, IReadOnlyList<(double X, double Y)> points, bool under) =>
        from gap in (double[])[4, 8, 12, 16, 22, 28, 36, 46, 58, 72]
        from end in points.Reverse()
        from below in (bool[])[under, !under]
        select size with { Left = end.X - size.Width, Top = below ? end.Y + gap : end.Y - gap - size.Height };

    /// <summary>Close to the level before far from it, outside it before inside, from the left to the right.</summary>
    static IEnumerable<Box> AlongLevel(Box size, double y, PixelRect area, bool under) =>
        from gap in (double[])[3, 7, 11, 16, 22, 30, 40]
        from below in (bool[])[under, !under]
        from step in Enumerable.Range(0, 60)
        select size with { Left = area.Left + 8 + (area.Width - 16 - size.Width) * step / 59, Top = below ? y + gap : y - gap - size.Height };

    /// <summary>On the side where there is room, at the bottom before farther up.</summary>
    static IEnumerable<Box> BesideUpright(Box size, (double X, double Y) foot, PixelRect area)
    {
        var late = foot.X > (area.Left + area.Right) / 2;
        return from row in Enumerable.Range(0, (int)(area.Height / size.Height))
               from left in (bool[])[late, !late]
               select size with { Left = left ? foot.X - 5 - size.Width : foot.X + 5, Top = foot.Y - 2 - size.Height * (row + 1) };
    }

    [GeneratedRegex("""(id="|url\(#|href="#)([A-Za-z_0-9-]+)""")]
    private static partial Regex Names();

    [GeneratedRegex("<svg[^>]*>")]
    private static partial Regex Root();

    /// <summary>The embedded faces, for the plot's own measurements and for paper.</summary>
    sealed class Plex : IFontResolver
    {
        public const string Family = "IBM Plex Sans";

        static readonly SKTypeface Text = Load(Typeface.Text), Strong = Load(Typeface.Strong);

        /// <summary>Pixels.</summary>
        public static double WidthOf(string text, float size)
        {
            using var font = new SKFont(Text, size);
            return font.MeasureText(text);
        }

        public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            fontName == Family ? weight >= FontWeight.SemiBold ? Strong : Text : null;

        public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) => fontName == Family ? bold ? Strong : Text : null;

        static SKTypeface Load(Typeface face) => SKTypeface.FromData(SKData.CreateCopy(PlexFonts.BytesOf(face)));
    }
}
