using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;
using Rigging.Web.Desk;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Drawings;

/// <summary>Which way an edge goes, as it was worked out by hand: what is expected of the measurement and what is drawn must both say so.</summary>
public sealed class AdjustersByHandTests
{
    const string Rod = """{ "mmPerTurn": 1.06, "hornArmMm": 60, "lengtheningLowers": LOWERS, "leastTurns": -5, "greatestTurns": 5, "stepTurns": 0.5, "source": "invented" }""";

    const string Fork = """{ "mmPerTurn": 1.06, "elevationDeg": 35, "strutsApartM": 0.68, "fittingYM": 2.4, "leastTurns": 2, "greatestTurns": 14, "stepTurns": 0.5, "source": "invented" }""";

    static Airframe With(bool lengtheningLowers) => School.AirframeWith("flapRod", Rod.Replace("LOWERS", lengtheningLowers ? "true" : "false", StringComparison.Ordinal)).Read();

    static readonly Airframe Strutted = School.AirframeWith("strutFork", Fork, "strut-at-each-spar").Read();

    public static TheoryData<Control, string, double, double, string, string> ByHand()
    {
        TheoryData<Control, string, double, double, string, string> rows = [];
        foreach (var line in File.ReadLines(Path.Combine(Repository.Home, "tests", "Rigging.Web.Tests", "Data", "adjusters-by-hand.csv")).Where(line => !line.StartsWith('#')).Skip(1))
        {
            var cell = line.Split(',');
            rows.Add(Enum.Parse<Control>(cell[0]), cell[1], double.Parse(cell[2], CultureInfo.InvariantCulture), double.Parse(cell[3], CultureInfo.InvariantCulture), cell[4], cell[5]);
        }
        return rows;
    }

    static Airframe Of(Control control, string lowers) => control.IsStrutFork() ? Strutted : control.IsFlapRod() ? With(lowers == "yes") : School.Airframe.Read();

    [Theory, MemberData(nameof(ByHand))]
    public void The_edge_is_expected_to_go_the_way_worked_out_by_hand(Control control, string lowers, double from, double to, string becomes, string edge)
    {
        _ = becomes;
        var move = EdgeMove.Of(control.OnFile(), from, to, Of(control, lowers))!;

        Assert.Equal(edge switch { "down" or "left" => 1, "up" or "right" => -1, _ => 0 }, move.Way);
        Assert.Equal(move.Way, Math.Sign(Math.Round(move.Turned!.Value.Degrees, 9)));
    }

    [Fact]
    public void The_table_by_hand_holds_every_adjuster_both_ways() =>
        Assert.All(Enum.GetValues<Control>().Where(control => control.IsEccentric() || control.StandsAtANumber()),
            control => Assert.Equal(2, ByHand().Where(row => row.Data.Item1 == control).Select(row => row.Data.Item6).Where(edge => edge != "same").Distinct().Count()));

    public static TheoryData<Control, double, double, string, string> Forks()
    {
        TheoryData<Control, double, double, string, string> rows = [];
        foreach (var row in ByHand().Select(row => row.Data).Where(row => row.Item1.IsStrutFork())) rows.Add(row.Item1, row.Item3, row.Item4, row.Item5, row.Item6);
        return rows;
    }

    [Theory, MemberData(nameof(Forks))]
    public void A_fork_is_drawn_as_worked_out_by_hand(Control fork, double from, double to, string becomes, string edge)
    {
        var drawing = AdjusterDrawings.Draw(Strutted, fork, from, to)!;
        var outlines = drawing.Marks.OfType<Outline>().ToList();
        Outline Strut(Pen pen) => outlines.Single(outline => outline.Pen == pen && outline.Points.Count == 2 && outline.Points[0].X == outline.Points[1].X);
        Outline Section(Pen pen) => outlines.Single(outline => outline.Pen == pen && outline.Points.Count > 6);
        static double Long(Outline strut) => Math.Abs(strut.Points[1].Y - strut.Points[0].Y);
        // The edge is the end of the section farther from the front strut; down the paper is more.
        Point Edge(Outline section) => fork == Control.LeftStrutFork ? section.Points.MaxBy(point => point.X) : section.Points.MinBy(point => point.X);

        Assert.Equal(becomes == "longer", Long(Strut(Pen.AsLeft)) > Long(Strut(Pen.AsFound)));
        Assert.Equal(edge == "down", Edge(Section(Pen.AsLeft)).Y > Edge(Section(Pen.AsFound)).Y);
        Assert.Contains(drawing.Marks.OfType<Lettering>(), text => text.Text == becomes);
        Assert.EndsWith($"trailing edge {edge}", drawing.Title, StringComparison.Ordinal);
        Assert.StartsWith(fork == Control.LeftStrutFork ? "Left rear strut fork: " : "Right rear strut fork: ", drawing.Title, StringComparison.Ordinal);
        Assert.Equal($"{(fork == Control.LeftStrutFork ? "left" : "right")} wing at its struts, from the tip", drawing.Viewpoint);
    }

    /// <summary>A turn and a half of 1.06 mm at 35° lifts 2.77 mm over 680 mm; half a flat of a 2 mm throw about neutral drops 1.04 mm.</summary>
    [Fact]
    public void How_far_the_rear_spar_goes_is_plane_geometry()
    {
        Assert.Equal(-1.5 * 1.06 / Math.Sin(35 * Math.PI / 180), AdjusterDrawings.RearSparDownMm(Strutted, Control.LeftStrutFork, 8, 9.5)!.Value, 9);
        var throwMm = School.Airframe.Read().Eccentric!.ThrowMm;
        Assert.Equal(2 * throwMm * Math.Sin(15 * Math.PI / 180), AdjusterDrawings.RearSparDownMm(School.Airframe.Read(), Control.LeftEccentric, -15, 15)!.Value, 9);
    }
}
