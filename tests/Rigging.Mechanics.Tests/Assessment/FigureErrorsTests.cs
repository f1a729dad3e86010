using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Assessment;

/// <summary>What an estimated figure leaves open is worked out from the figure, and counts where it acts.</summary>
public class FigureErrorsTests
{
    static Airframe Estimated(double accuracyPercent, params IEnumerable<EstimableFigure> figures) => Trainer.Airframe with
    {
        Estimated = [.. figures.Select(figure => new EstimatedFigure(figure, 1, "by hand", "none", accuracyPercent))],
    };

    static readonly TestPoint[] Points =
    [
        Trainer.Point(Manoeuvre.ReleaseWheel, 75, new BankAfter(10, -9)),
        Trainer.Point(Manoeuvre.ReleaseWheel, 105, new BankAfter(10, -14)),
        Trainer.Point(Manoeuvre.ReleaseAll, 95, new BankAfter(10, -11), new HeadingChange(8, -12) { Sd = 3 }),
        Trainer.Point(Manoeuvre.HoldLevel, 95, new BallReading(0.3), new HeadingRate(-0.6)),
    ];

    static Evidence By(Airframe airframe) => new(Reports.Of(Points), new Aeroplane(airframe), Practice.Usual);

    static double Width(Estimate? estimate) => estimate!.High - estimate.Low;

    static double OfRudder(TestPoint[] points, Airframe airframe) =>
        Width(Assessor.Assess(Reports.Of(points), airframe).Causes[(int)Cause.RudderOrFinOffset].Amplitude);

    /// <summary>Of 25 %, the 15 % that a published figure has are allowed for already: a fifth is left, √(0.25² − 0.15²) = 0.2.</summary>
    [Fact]
    public void An_error_is_what_the_prediction_changes_by_when_the_figure_does()
    {
        var d = Trainer.Airframe.Derivatives;
        Airframe With(double times) => Trainer.Airframe with { Derivatives = d with { CnBeta = times * d.CnBeta } };
        var (more, less) = (By(With(1.2)), By(With(0.8)));

        foreach (var (place, observation) in By(Estimated(25, EstimableFigure.CnBeta)).Observations.Index())
        {
            var error = Assert.Single(observation.PerFigure!);
            Assert.Equal((more.Observations[place].Known - less.Observations[place].Known) / 2, error[^1], 1e-9);
            for (var trace = 0; trace < observation.Gains.Length; trace++)
            {
                var change = (more.Observations[place].Gains[trace] - less.Observations[place].Gains[trace]) / 2;
                Assert.Equal(change, error[trace], 1e-9 * (1 + Math.Abs(change)));
            }
        }
    }

    /// <summary>
    /// By hand: 25 % beyond the 15 % of any is a fifth of the stream's moment at that power and speed. What there is more of it counts by its yaw.
    /// </summary>
    [Theory, InlineData(EstimableFigure.SlipstreamCnAtFullPower, 0), InlineData(EstimableFigure.SlipstreamClAtFullPower, 1)]
    public void The_slipstream_is_as_uncertain_as_its_moments(EstimableFigure figure, double ofCause)
    {
        var point = Points[3] with { PowerPercent = 100 };
        var evidence = new Evidence(Reports.Of(point), new Aeroplane(Estimated(25, figure)), Practice.Usual);
        var flight = evidence.Aeroplane.At(point);
        foreach (var (place, observation) in evidence.Observations.Index())
        {
            var moment = ofCause == 0 ? new Asymmetry(Yawing: flight.Slipstream.Yawing) : new Asymmetry(Rolling: flight.Slipstream.Rolling);
            var expected = PilotReading.Predict(flight, point.Manoeuvre, point.Readings[place], 0.2 * moment)!.Value;
            var error = Assert.Single(observation.PerFigure!);
            Assert.Equal(expected, error[^1], 1e-12);
            Assert.Equal(ofCause * expected, error[ModelledCause.Of(Cause.Slipstream).First], 1e-12);
            Assert.Equal(1 + ofCause, error.Count(one => one != 0));
        }
    }

    /// <summary>By the matrix as a whole, inverted by the library.</summary>
    [Fact]
    public void Their_covariance_is_taken_out_as_the_whole_matrix_would_be()
    {
        const double modelError = 0.2, common = 0.7;
        var observations = By(Estimated(35, Enum.GetValues<EstimableFigure>())).Observations;
        double[] amplitudes = [.. ModelledCause.Traces.Select(trace => trace.Cause switch
        {
            Cause.RudderOrFinOffset => 2,
            Cause.PanelIncidenceDifference => 0.1,
            _ => 0,
        })];
        var noise = new ObservationNoise(observations, amplitudes, modelError);
        var count = observations.Count;
        var whole = Matrix<double>.Build.Dense(count, count);
        double[] Parts(Observation observation) =>
        [
            observation.Known * observation.ErrorOfKnown,
            .. amplitudes.Select((amplitude, trace) => observation.Gains[trace] * amplitude * observation.ErrorOf(trace)),
        ];
        double[] Figures(Observation observation) =>
            [.. observation.PerFigure!.Select(figure => figure[^1] + amplitudes.Select((amplitude, trace) => amplitude * figure[trace]).Sum())];
        double Own(Observation observation) => modelError * modelError * Parts(observation).Sum(part => part * part) + Figures(observation).Sum(error => error * error);
        for (var i = 0; i < count; i++)
            for (var j = 0; j < count; j++)
            {
                var (one, other) = (observations[i], observations[j]);
                if (one.Family == other.Family)
                    whole[i, j] += modelError * modelError * common * Parts(one).Sum() * Parts(other).Sum();
                whole[i, j] += common * Figures(one).Zip(Figures(other), (x, y) => x * y).Sum();
                if (i == j)
                    whole[i, i] += one.Variance + (1 - common) * Own(one);
            }
        double[] x = [.. Enumerable.Range(0, count).Select(i => 1 + 0.3 * i)];
        double[] y = [.. Enumerable.Range(0, count).Select(i => Math.Cos(i))];

        var expected = Vector<double>.Build.Dense(x) * whole.Inverse() * Vector<double>.Build.Dense(y);

        Assert.Equal(expected, noise.Product(x, y), 1e-9 * Math.Abs(expected));
        Assert.Equal(Math.Log(whole.Determinant()), noise.LogDeterminant, 1e-9);
    }

    [Fact]
    public void An_estimate_as_good_as_a_published_figure_changes_nothing() =>
        Assert.Equal(
            ContractWriter.Write(Assessor.Assess(Reports.Of(Points), Trainer.Airframe) with { Cautions = [] }),
            ContractWriter.Write(Assessor.Assess(Reports.Of(Points), Estimated(15, Enum.GetValues<EstimableFigure>())) with { Cautions = [] }));

    /// <summary>
    /// What a rudder offset does feet off goes by rudder power over weathercock stability: so far as either is open, so far is the offset.
    /// </summary>
    [Theory, InlineData(EstimableFigure.CnBeta), InlineData(EstimableFigure.CnRudder)]
    public void The_worse_a_figure_is_the_wider_is_what_rests_on_it(EstimableFigure figure)
    {
        double[] widths = [.. ((double[])[15, 30, 50]).Select(percent => OfRudder(Points, Estimated(percent, figure)))];

        Assert.True(widths[0] < widths[1] && widths[1] < widths[2], string.Join(", ", widths));
    }

    /// <summary>A rate of roll with the ball in the middle is moment over damping; how well the fin holds the nose is no part of it.</summary>
    [Fact]
    public void A_figure_counts_only_where_it_acts()
    {
        TestPoint[] rolls =
        [
            Trainer.Point(Manoeuvre.ReleaseWheel, 75, new RollRate(-0.8)), Trainer.Point(Manoeuvre.ReleaseWheel, 105, new RollRate(-1.2)),
        ];
        double Wide(Airframe airframe) => Width(Assessor.Assess(Reports.Of(rolls), airframe).RollTendency);

        Assert.InRange(Wide(Estimated(40, EstimableFigure.YawInertia)) / Wide(Trainer.Airframe), 0.99, 1.02);
    }

    /// <summary>Words have no number, and rest on the figures all the same.</summary>
    [Fact]
    public void Words_are_as_uncertain_as_the_figures_make_them()
    {
        TestPoint[] words = [Trainer.Point(Manoeuvre.ReleaseAll, 95, new Rolls(RollSide.Left, RollStrength.Slowly))];

        Assert.True(OfRudder(words, Estimated(80, EstimableFigure.ClBeta, EstimableFigure.CnBeta)) > OfRudder(words, Trainer.Airframe));
    }
}
