namespace Rigging.Web.Drawings;

/// <summary>
/// A drawing as a list of marks, the same for screen and paper. Its own units, x to the right, y down, origin top left;
/// angles in degrees, clockwise from the right. Marks later in the list lie on top. The title says what it shows (read out in
/// place of the picture, and its caption); the viewpoint says where the eye is: "from behind, looking forward".
/// </summary>
public sealed record Drawing(double Width, double Height, string Title, string Viewpoint, IReadOnlyList<Mark> Marks)
{
    /// <summary>No drawing is wider: on a phone it stands some 320 pixels wide, and its smallest letters are still read there.</summary>
    public const double MostWide = 340;

    public const double SmallLetters = 13;
}

/// <summary>A place on a drawing.</summary>
public readonly record struct Point(double X, double Y)
{
    public Point Plus(double x, double y) => new(X + x, Y + y);

    /// <summary>Turned clockwise about a pivot.</summary>
    public Point Turned(double degrees, Point pivot)
    {
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));
        var (x, y) = (X - pivot.X, Y - pivot.Y);
        return new(pivot.X + x * cos - y * sin, pivot.Y + x * sin + y * cos);
    }

    /// <summary>At a distance in a direction.</summary>
    public Point Towards(double degrees, double distance) => Plus(distance, 0).Turned(degrees, this);
}

/// <summary>What a colour stands for. Paper: the ground, to hide what lies behind.</summary>
public enum Role { Ink, Muted, Accent, Caution, Paper }

/// <summary>A line's role and width in the drawing's units.</summary>
public sealed record Pen(Role Role, double Width, bool Dashed = false)
{
    public static readonly Pen Outline = new(Role.Ink, 1.5);
    public static readonly Pen Fine = new(Role.Muted, 0.75);
    public static readonly Pen AsFound = new(Role.Muted, 1.5, Dashed: true);
    public static readonly Pen AsLeft = new(Role.Accent, 3);
    public static readonly Pen Reach = new(Role.Accent, 1.5);
    public static readonly Pen Limit = new(Role.Caution, 3);
}

/// <summary>A filled area; less than full opacity is a band of uncertainty.</summary>
public sealed record Fill(Role Role, double Opacity = 1)
{
    public static readonly Fill Paper = new(Role.Paper);
    public static readonly Fill Solid = new(Role.Accent);
    public static readonly Fill Band = new(Role.Accent, 0.18);
}

/// <summary>How lettering sits at its point.</summary>
public enum Align { Start, Middle, End }

/// <summary>One mark of a drawing.</summary>
public abstract record Mark;

/// <summary>Straight runs through points; closed ones may be filled.</summary>
public sealed record Outline(IReadOnlyList<Point> Points, Pen? Pen, Fill? Fill = null, bool Closed = true) : Mark;

/// <summary>Part of a circle from a start, swept clockwise when positive; at most one turn.</summary>
public sealed record Arc(Point Centre, double Radius, double StartDeg, double SweepDeg, Pen Pen) : Mark
{
    public Point At(double share) => Centre.Towards(StartDeg + share * SweepDeg, Radius);
}

/// <summary>A line of text on its baseline. Figures are set in the monospaced face.</summary>
public sealed record Lettering(Point At, string Text, Role Role = Role.Ink, Align Align = Align.Start, bool Figures = false, bool Strong = false, double Size = 14) : Mark;
