using System.Globalization;
using System.Security;
using System.Text;

namespace Rigging.Web.Drawings;

/// <summary>A drawing as an inline SVG; colours come from the page's stylesheet through the role's class.</summary>
public static class Svg
{
    public static string Of(Drawing drawing) => Of(drawing, $"role=\"img\" aria-label=\"{E(drawing.Title)}. Seen {E(drawing.Viewpoint)}.\"");

    /// <summary>The same where the words beside it say all there is: nothing is read out.</summary>
    public static string Silent(Drawing drawing) => Of(drawing, "aria-hidden=\"true\" focusable=\"false\"");

    static string Of(Drawing drawing, string read)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"<svg class=\"drawing{(drawing.Height > drawing.Width ? " tall" : "")}\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {N(drawing.Width)} {N(drawing.Height)}\" {read}>");
        foreach (var mark in drawing.Marks) text.Append(Of(mark));
        return text.Append("</svg>").ToString();
    }

    static string Of(Mark mark) => mark switch
    {
        Outline o => $"<path d=\"M{string.Join('L', o.Points.Select(P))}{(o.Closed ? "Z" : "")}\" {Paint(o.Pen, o.Fill)}/>",
        Arc { SweepDeg: >= 360 or <= -360 } a => $"<circle cx=\"{N(a.Centre.X)}\" cy=\"{N(a.Centre.Y)}\" r=\"{N(a.Radius)}\" {Paint(a.Pen, null)}/>",
        Arc a => $"<path d=\"M{P(a.At(0))}A{N(a.Radius)} {N(a.Radius)} 0 {(Math.Abs(a.SweepDeg) > 180 ? 1 : 0)} {(a.SweepDeg > 0 ? 1 : 0)} {P(a.At(1))}\" {Paint(a.Pen, null)}/>",
        Lettering t => $"<text x=\"{N(t.At.X)}\" y=\"{N(t.At.Y)}\" font-size=\"{N(t.Size)}\" text-anchor=\"{t.Align.ToString().ToLowerInvariant()}\" class=\"f-{C(t.Role)}{(t.Figures ? " figures" : "")}{(t.Strong ? " strong" : "")}\">{E(t.Text)}</text>",
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "a mark this renderer does not know"),
    };

    // One element can carry a fill and a stroke; the classes keep them apart.
    static string Paint(Pen? pen, Fill? fill) => string.Join(' ', ((string?[])[
        $"class=\"{string.Join(' ', ((string?[])[pen is null ? null : "s-" + C(pen.Role), fill is null ? "f-none" : "f-" + C(fill.Role)]).OfType<string>())}\"",
        pen is null ? null : $"stroke-width=\"{N(pen.Width)}\"",
        pen is { Dashed: true } ? "stroke-dasharray=\"5 4\"" : null,
        fill is { Opacity: < 1 } ? $"fill-opacity=\"{N(fill.Opacity)}\"" : null]).OfType<string>());

    static string C(Role role) => role.ToString().ToLowerInvariant();
    static string P(Point point) => $"{N(point.X)} {N(point.Y)}";
    static string N(double number) => (Math.Round(number, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);
    static string E(string text) => SecurityElement.Escape(text);
}
