namespace Rigging.Mechanics.Contract;

/// <summary>Cables and travel, with what is physical for a light aeroplane; common practice, no source.</summary>
static class ControlsReader
{
    static readonly Within TensionN = new(0, 5000, "N");
    static readonly Within TravelDeg = new(0, 90, "°");
    static readonly Within ExpansionPerK = new(0, 0.0001, "per K");

    public static CableOnFile Cable(FieldReader cable) => new(cable.Text("name", 60), cable.ObjectIfGiven("tension", Tension));

    public static TravelOnFile Travel(FieldReader travel)
    {
        var read = new TravelOnFile(
            travel.Word<ControlSurface>("surface") ?? default,
            travel.Number("upLeastDeg", TravelDeg),
            travel.Number("upGreatestDeg", TravelDeg),
            travel.Number("downLeastDeg", TravelDeg),
            travel.Number("downGreatestDeg", TravelDeg),
            travel.NumberIfGiven("alikeWithinDeg", TravelDeg),
            travel.Text("source"));
        if (read.UpGreatestDeg < read.UpLeastDeg)
            travel.Refuse("upGreatestDeg", "at least upLeastDeg");
        if (read.DownGreatestDeg < read.DownLeastDeg)
            travel.Refuse("downGreatestDeg", "at least downLeastDeg");
        return read;
    }

    static TensionOnFile Tension(FieldReader tension)
    {
        var read = new TensionOnFile(
            tension.Number("leastN", TensionN),
            tension.Number("greatestN", TensionN),
            tension.Number("degC", new(-40, 50, "°C")),
            tension.Text("source"),
            tension.ObjectIfGiven("stretch", stretch => new CableStretchOnFile(
                stretch.Number("stiffnessN", new(1e4, 1e7, "N")),
                stretch.Number("expansionPerK", ExpansionPerK),
                stretch.Number("airframeExpansionPerK", ExpansionPerK),
                stretch.NumberIfGiven("rigidity", new(0, 1)))));
        if (read.GreatestN <= read.LeastN)
            tension.Refuse("greatestN", "more than leastN");
        return read;
    }
}
