namespace Rigging.Web.Plots;

/// <summary>A rectangle on the picture, pixels, y down.</summary>
readonly record struct Box(double Left, double Top, double Width, double Height)
{
    public double Right => Left + Width;

    public double Bottom => Top + Height;

    public static Box About(double x, double y, double half) => new(x - half, y - half, 2 * half, 2 * half);

    public Box Wider(double by) => new(Left - by, Top - by, Width + 2 * by, Height + 2 * by);

    public bool Holds(Box inner) => inner.Left >= Left && inner.Right <= Right && inner.Top >= Top && inner.Bottom <= Bottom;

    /// <summary>Square pixels in both.</summary>
    public double Shared(Box other) => Math.Max(0, Math.Min(Right, other.Right) - Math.Max(Left, other.Left)) * Math.Max(0, Math.Min(Bottom, other.Bottom) - Math.Max(Top, other.Top));

    /// <summary>How much of a straight line runs through it, pixels.</summary>
    public double Crossed((double X, double Y) from, (double X, double Y) to)
    {
        var (across, down) = (to.X - from.X, to.Y - from.Y);
        var (enters, leaves) = (0.0, 1.0);
        foreach (var (step, room) in ((double, double)[])[(-across, from.X - Left), (across, Right - from.X), (-down, from.Y - Top), (down, Bottom - from.Y)])
        {
            if (step == 0 && room < 0) return 0;
            if (step < 0) enters = Math.Max(enters, room / step);
            if (step > 0) leaves = Math.Min(leaves, room / step);
        }
        return Math.Max(0, leaves - enters) * Math.Sqrt(across * across + down * down);
    }
}

/// <summary>Where a name may stand on a plot without lying on a line, a reading or another name.</summary>
sealed class FreePlace(Box picture)
{
    // Half of the broadest line, and a little air.
    const double Air = 2.5;

    readonly List<((double X, double Y) From, (double X, double Y) To)> lines = [];
    readonly List<Box> taken = [];

    public void Line(IReadOnlyList<(double X, double Y)> points) => lines.AddRange(points.Zip(points.Skip(1)));

    public void Take(Box box) => taken.Add(box);

    /// <summary>The first of the places that touches nothing; where there is none, the one that touches least. It is taken from then on.</summary>
    /// <param name="places">Best liked first; one outside the picture is passed over. Null when all are.</param>
    public Box? Find(IEnumerable<Box> places)
    {
        (Box Place, double Touches)? best = null;
        foreach (var place in places.Where(picture.Holds))
        {
            var wider = place.Wider(Air);
            var touches = lines.Sum(line => wider.Crossed(line.From, line.To)) + taken.Sum(place.Shared);
            if (best is { } found && touches >= found.Touches) continue;
            best = (place, touches);
            if (touches == 0) break;
        }
        if (best is not { } chosen) return null;
        taken.Add(chosen.Place);
        return chosen.Place;
    }
}
