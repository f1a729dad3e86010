using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Tests.Wing;

public class LiftingLineTests
{
    [Fact]
    public void The_published_values_come_out()
    {
        foreach (var row in Published.Table("wing-published.csv"))
        {
            var actual = Quantity(row["quantity"], Planforms.Of(row), (int)row.Number("nodes"));
            Assert.True(Math.Abs(actual / row.Number("expected") - 1) <= row.Number("tolerance"), $"{row}: {actual}");
        }
    }

    /// <summary>
    /// Aerodynamics for Engineering Students, finite-wing worked example (recalled; an independent recomputation agrees
    /// to every recalled digit): span 12.192 m, chord 3.048 to 1.524 m, incidence 5.5° to 3.5°, section slope 5.5 to 5.8,
    /// all linear, collocated at 22.5°, 45°, 67.5° and 90°.
    /// </summary>
    [Fact]
    public void The_worked_example_of_four_points_comes_out()
    {
        var wing = Planform.OfStations([new(0, 3.048, Radians(5.5), 5.5), new(6.096, 1.524, Radians(3.5), 5.8)]);

        var terms = new LiftingLine(wing, 7).BuiltIn().Terms;

        Assert.Equal(0.020329, terms[0], 5e-7);
        Assert.Equal(-0.000955, terms[2], 5e-7);
        Assert.Equal(0.001029, terms[4], 5e-7);
        Assert.Equal(-0.0002766, terms[6], 5e-8);
    }

    static double Quantity(string name, Planform wing, int nodes)
    {
        var line = new LiftingLine(wing, nodes);
        var lift = line.Response(IncidenceShape.Uniform(wing.SpanM));
        var efficiency = lift.LiftCoefficient * lift.LiftCoefficient / (Math.PI * wing.AspectRatio * lift.InducedDragCoefficient);
        var damping = -line.Response(IncidenceShape.RollRate(wing.SpanM)).RollingMomentCoefficient;
        double Panels() => -2 * line.Response(IncidenceShape.BandDifference(0, wing.SpanM / 2)).RollingMomentCoefficient;
        double Ailerons() => -line.Response(PublishedAilerons(wing)).RollingMomentCoefficient;
        return name switch
        {
            "lift-slope" => lift.LiftCoefficient,
            "induced-drag-factor" => 1 / efficiency - 1,
            "span-efficiency" => efficiency,
            "roll-damping" => damping,
            "panel-difference" => Panels(),
            "steady-roll-per-panel-difference" => Panels() / damping,
            "aileron-power" => Ailerons(),
            "steady-roll-5deg-aileron" => Ailerons() * Radians(5) / damping,
            _ => throw new ArgumentException(name),
        };
    }

    /// <summary>
    /// The published ailerons: 0.506 to 0.876 of the half span, flap share 0.28 to 0.25 on a straight hinge line, hinge
    /// effectiveness 0.85, right up and left down by one radian of deflection each, in pieces fine enough for six digits.
    /// </summary>
    static IncidenceShape PublishedAilerons(Planform wing)
    {
        const int pieces = 2000;
        var half = wing.SpanM / 2;
        var (inboardYM, outboardYM) = (0.506 * half, 0.876 * half);
        double HingeXM(double yM, double share) => (0.75 - share) * wing.ChordAt(yM);
        var (inboardXM, outboardXM) = (HingeXM(inboardYM, 0.28), HingeXM(outboardYM, 0.25));
        double At(double yM)
        {
            var hingeXM = inboardXM + (yM - inboardYM) / (outboardYM - inboardYM) * (outboardXM - inboardXM);
            return 0.85 * IncidenceShape.FlapEffectiveness(0.75 - hingeXM / wing.ChordAt(yM));
        }
        var right = Enumerable.Range(0, pieces).Select(i =>
        {
            var (from, to) = (i / (double)pieces, (i + 1) / (double)pieces);
            var (fromYM, toYM) = (inboardYM + from * (outboardYM - inboardYM), inboardYM + to * (outboardYM - inboardYM));
            return new IncidenceShape.Piece(fromYM, toYM, At(fromYM), At(toYM));
        }).ToArray();
        return new(right.Concat(right.Select(p => new IncidenceShape.Piece(-p.ToYM, -p.FromYM, -p.AtToRad, -p.AtFromRad))));
    }

    static double Radians(double degrees) => degrees * Math.PI / 180;
}
