namespace Rigging.Mechanics.Contract;

/// <summary>The adjusters beside the eccentric, with what is physical for a light aeroplane; common practice, no source.</summary>
static class AdjusterReader
{
    static readonly Within MmPerTurn = new(0.1, 10, "mm");
    static readonly Within Turns = new(-60, 60, "turns");
    static readonly Within StepTurns = new(0.1, 2, "turns");

    public static StrutForkOnFile StrutFork(FieldReader fork, WingGeometry? wing)
    {
        var read = new StrutForkOnFile(
            fork.Number("mmPerTurn", MmPerTurn),
            fork.Number("elevationDeg", new(5, 85, "°")),
            fork.Number("strutsApartM", new(0.05, 5, "m")),
            fork.Number("fittingYM", new(0, 20, "m")),
            fork.Number("leastTurns", Turns),
            fork.Number("greatestTurns", Turns),
            fork.Number("stepTurns", StepTurns),
            fork.Text("source"),
            fork.TextIfGiven("enteredBy"));
        if (read.FittingYM <= wing?.PanelInboardYM)
            fork.Refuse("fittingYM", "more than the wing's panelInboardYM");
        if (read.FittingYM >= wing?.SpanM / 2)
            fork.Refuse("fittingYM", "less than half the span");
        StopsApart(fork, read.LeastTurns, read.GreatestTurns);
        return read;
    }

    public static FlapRodOnFile FlapRod(FieldReader rod)
    {
        var read = new FlapRodOnFile(
            rod.Number("mmPerTurn", MmPerTurn),
            rod.Number("hornArmMm", new(5, 500, "mm")),
            rod.Flag("lengtheningLowers"),
            rod.Number("leastTurns", Turns),
            rod.Number("greatestTurns", Turns),
            rod.Number("stepTurns", StepTurns),
            rod.Text("source"),
            rod.TextIfGiven("enteredBy"));
        StopsApart(rod, read.LeastTurns, read.GreatestTurns);
        return read;
    }

    public static TabBendOnFile TabBend(FieldReader tab) =>
        new(tab.Number("maxDeg", new(1, 60, "°")), tab.Word<TabGain>("gainIs") ?? default, tab.Text("source"), tab.TextIfGiven("enteredBy"));

    static void StopsApart(FieldReader adjuster, double least, double greatest)
    {
        if (greatest <= least)
            adjuster.Refuse("greatestTurns", "more than leastTurns");
    }
}
