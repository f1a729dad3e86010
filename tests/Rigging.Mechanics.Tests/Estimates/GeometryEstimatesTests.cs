using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Estimates;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Tests.Contract;

namespace Rigging.Mechanics.Tests.Estimates;

public class GeometryEstimatesTests
{
    const string Fin = """{ "areaM2": 1.1, "armM": 4.2, "heightM": 0.6, "liftSlopePerRad": 2.6 }""";

    static readonly string WithFin = Examples.Edited(Examples.Airframe, "fin", Fin);

    static readonly string Bare = Examples.Edited(Examples.Edited(Examples.Edited(Examples.Edited(WithFin,
        "rudder.areaM2", "0.45"), "derivatives", null), "mass.ixxKgM2", null), "mass.izzKgM2", null);

    [Fact]
    public void Without_derivatives_and_inertias_they_are_estimated_and_each_is_labelled()
    {
        var read = ContractReader.ReadAirframe(Bare);

        Assert.Empty(read.Faults);
        Assert.Equal(Enum.GetValues<EstimableFigure>(), read.Value!.Estimated!.Select(figure => figure.Figure).Order());
        Assert.All(read.Value.Estimated!, figure => Assert.True(figure.AccuracyPercent >= 20 && figure.Method.Length > 10 && figure.Source.Length > 10));
        Assert.Empty(Plausibility.Of(read.Value));
    }

    [Fact]
    public void A_files_own_values_win()
    {
        var read = ContractReader.ReadAirframe(WithFin).Value!;

        Assert.Null(read.Estimated);
        Assert.Equal(0.070, read.Derivatives.CnBeta);

        var one = ContractReader.ReadAirframe(Examples.Edited(WithFin, "derivatives.cnBeta", null)).Value!;
        Assert.Equal(EstimableFigure.CnBeta, Assert.Single(one.Estimated!).Figure);
        Assert.Equal(-0.085, one.Derivatives.ClBeta);
    }

    /// <summary>By hand: 2.6·1.1/13.95 = 0.2050; arm 4.2/9.64 = 0.4357, height 0.0622. Yaw 0.2050·0.4357 = 0.0893, damping −2·0.2050·0.4357² = −0.0778.</summary>
    [Fact]
    public void The_fin_is_what_it_is_by_hand()
    {
        var d = ContractReader.ReadAirframe(Bare).Value!.Derivatives;

        Assert.Equal(-0.2050, d.CYBeta, 5e-4);
        Assert.Equal(0.0893, d.CnBeta, 5e-4);
        Assert.Equal(-0.0778, d.CnR, 5e-4);
    }

    /// <summary>By hand, rudder 0.45 of 1.1 m²: share 0.409, θ = acos(−0.182) = 1.754, effectiveness 1 − (1.754 − 0.983)/π = 0.755; 0.2050·0.755 = 0.1547.</summary>
    [Fact]
    public void The_rudder_is_what_it_is_by_hand()
    {
        var d = ContractReader.ReadAirframe(Bare).Value!.Derivatives;

        Assert.Equal(0.1547, d.CYRudder, 1e-3);
        Assert.Equal(-0.1547 * 0.4357, d.CnRudder, 1e-3);
        Assert.True(d.ClRudder > 0 && d.CnAileron < 0);
    }

    /// <summary>
    /// Set A of <c>lateral-modes-published.csv</c>: taper 0.54, dihedral 7.5°, lift coefficient 0.41 on 184 ft² and 33.4 ft. The wing's part of
    /// three published derivatives and both inertias lie within the accuracy that is claimed.
    /// </summary>
    [Fact]
    public void The_published_four_seater_lies_within_the_claimed_accuracy()
    {
        var row = Published.Table("lateral-modes-published.csv").Single(r => r["set"] == "A");
        const double footM = 0.3048, poundKg = 0.45359237, slugFt2 = 1.3558179;
        var (spanM, areaM2) = (row.Number("spanFt") * footM, row.Number("areaFt2") * footM * footM);
        var rootM = 2 * areaM2 / (spanM * 1.54);
        var casKt = row.Number("speedFtPerS") * footM * 3600 / 1852;
        var airframe = Trainer.Airframe with
        {
            Wing = new(spanM, 7.5, Bracing.Cantilever, [new(0, rootM, 0, 5.9), new(spanM / 2, 0.54 * rootM, 0, 5.9)], 0.9, 0.5),
            Fin = new(1.1, 5, 0.5, 2.6),
            Mass = new(row.Number("weightLb") * poundKg, double.NaN, double.NaN, 0),
            Reference = Trainer.Airframe.Reference with { CasKt = casKt, PressureAltitudeFt = 0 },
        };
        var estimated = GeometryEstimates.Complete(airframe);
        // With a fin too small to matter what is left is the wing.
        var wing = GeometryEstimates.Figures(airframe, new(1e-9, 5, 0.5, 2.6)).ToDictionary(figure => figure.Figure);

        void Near(string column, double actual, double accuracyPercent) =>
            Assert.True(Math.Abs(actual / row.Number(column) - 1) <= accuracyPercent / 100, $"{column} {row.Number(column)}: {actual}");
        foreach (var (column, figure) in new[] { ("clBeta", EstimableFigure.ClBeta), ("clR", EstimableFigure.ClR), ("cnP", EstimableFigure.CnP) })
            Near(column, wing[figure].Value, wing[figure].AccuracyPercent);
        Near("ixx", estimated.Mass.IxxKgM2 / slugFt2, 25);
        Near("izz", estimated.Mass.IzzKgM2 / slugFt2, 25);
    }

    [Fact]
    public void Without_the_rudders_area_its_figures_are_asked_for()
    {
        var noRudder = Examples.Edited(Examples.Edited(WithFin, "derivatives", null), "rudder.areaM2", null);

        Assert.Contains("rudder.areaM2", Assert.Single(ContractReader.ReadAirframe(noRudder).Faults).Wanted, StringComparison.Ordinal);
        Assert.Equal("$.derivatives.cnRudder", Assert.Single(ContractReader.ReadAirframe(Examples.Edited(WithFin, "derivatives.cnRudder", null)).Faults).Path);
    }

    [Theory]
    [InlineData("fin.areaM2", "-1", "$.fin.areaM2")]
    [InlineData("fin.sweepDeg", "30", "$.fin.sweepDeg")]
    [InlineData("fin.armM", null, "$.fin.armM")]
    [InlineData("rudder.areaM2", "\"big\"", "$.rudder.areaM2")]
    [InlineData("estimated", """[{ "figure": "name", "value": 1, "method": "m", "source": "s", "accuracyPercent": 5 }]""", "$.estimated[0].figure")]
    public void A_spoilt_fin_is_refused_by_field(string path, string? json, string faultAt) =>
        Assert.Equal(faultAt, Assert.Single(ContractReader.ReadAirframe(Examples.Edited(WithFin, path, json)).Faults).Path);

    [Fact]
    public void Written_and_read_again_it_still_says_which_figures_are_estimates()
    {
        var once = ContractWriter.Write(ContractReader.ReadAirframe(Bare).Value!);

        Assert.Equal(once, ContractWriter.Write(ContractReader.ReadAirframe(once).Value!));
        Assert.Contains("\"estimated\"", once, StringComparison.Ordinal);
    }

    [Fact]
    public void Estimates_widen_the_answer_and_say_so()
    {
        var request = ContractReader.ReadRequest(Examples.Request).Value!;
        var onFile = Trainer.Airframe;
        var estimated = onFile with { Estimated = [.. Enum.GetValues<EstimableFigure>().Select(figure => new EstimatedFigure(figure, 1, "by hand", "none", 40))] };

        var (sure, vague) = (Assessor.Assess(request, onFile), Assessor.Assess(request, estimated));

        Assert.True(vague.RollTendency!.High - vague.RollTendency.Low > sure.RollTendency!.High - sure.RollTendency.Low);
        Assert.Contains(vague.Cautions, caution => caution.StartsWith("Estimated from geometry", StringComparison.Ordinal));
        Assert.DoesNotContain(sure.Cautions, caution => caution.StartsWith("Estimated", StringComparison.Ordinal));
    }

    [Fact]
    public void The_trainer_is_plausible() => Assert.Empty(Plausibility.Of(Trainer.Airframe));

    [Fact]
    public void What_no_light_aeroplane_has_is_warned_about_by_path()
    {
        Airframe With(Func<LateralDerivatives, LateralDerivatives> change) => Trainer.Airframe with { Derivatives = change(Trainer.Airframe.Derivatives) };
        void Warns(string path, Airframe airframe) => Assert.Contains(Plausibility.Of(airframe), warning => warning.Path == path);

        Warns("$.mass.ixxKgM2", Trainer.Airframe with { Mass = Trainer.Airframe.Mass with { IxxKgM2 = 5000 } });
        Warns("$.mass.izzKgM2", Trainer.Airframe with { Mass = Trainer.Airframe.Mass with { IzzKgM2 = 500 } });
        Warns("$.wing", Trainer.Airframe with { Wing = Trainer.Airframe.Wing with { Stations = [new(0, 3, 0, 6), new(4.82, 3, 0, 6)] } });
        Warns("$.derivatives", With(d => d with { ClBeta = 0.05, ClR = 0.4 }));
        Warns("$.derivatives.cnBeta", With(d => d with { CnBeta = -0.01 }));
        Warns("$.derivatives", With(d => d with { ClP = -4 }));
    }

    [Fact]
    public void Beyond_forty_degrees_of_bank_the_motion_says_so_itself()
    {
        var held = new Aeroplane(Trainer.Airframe).Reference;
        Asymmetry heavy = new(WeightNm: 400);

        Assert.True(held.Release.After(1, held.Held.Straight(heavy), 0, heavy).IsHonest);
        Assert.False(held.Release.After(20, held.Held.Straight(heavy), 0, heavy).IsHonest);
    }
}
