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
        Assert.All(read.Value.Estimated!, figure => Assert.True(figure.AccuracyPercent >= 15 && figure.Method.Length > 10 && figure.Source.Length > 10));
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

    /// <summary>
    /// By hand, A = 9.64²/13.95 = 6.66. Fin: 2.6·1.1/13.95 = 0.2050 in a sidewash of 0.724 + 1.53·0.0789 − 0.16 + 0.060 = 0.7446: 0.1527. Fuselage 1.253 × 1.060 m by the
    /// span: 1.2·0.7854·1.329/13.95 = 0.0898, high wing 1 + 0.85·0.870 = 1.739: 0.1562. Dihedral 0.00573·1.2 = 0.0069. Together 0.3157.
    /// Yaw: fin 0.1527·0.4357 = 0.0665; fuselage 7.23 m long with the centre of mass at 0.349 of it, 4.26 m² of side: factor 0.000723, Reynolds number 1.661,
    /// 57.3·0.000723·1.661·4.26·7.23/134.5 = 0.0157 the other way; lift 0.3075²/(4π·6.66) = 0.0011. Together 0.0519.
    /// Damping: 2·0.1527·0.4357² = 0.0580, drag 0.0109: −0.0689. Height: 0.0622·0.1527 = 0.0095 of the dihedral effect.
    /// </summary>
    [Fact]
    public void Sideslip_and_yaw_are_what_they_are_by_hand()
    {
        var d = ContractReader.ReadAirframe(Bare).Value!.Derivatives;

        Assert.Equal(-0.3157, d.CYBeta, 5e-4);
        Assert.Equal(0.0519, d.CnBeta, 5e-4);
        Assert.Equal(-0.0689, d.CnR, 5e-4);
        // −CL/6·A/(A + 4) = −0.05125·0.6248.
        Assert.Equal(-0.0320, d.CnP, 5e-4);
    }

    /// <summary>
    /// By hand, rudder 0.45 of 1.1 m²: share 0.409, θ = acos(−0.182) = 1.754, effectiveness 1 − (1.754 − 0.983)/π = 0.755; 0.9·0.2050·0.755 = 0.1393. Its lift
    /// stands 0.983·1.182/(4·2.371) = 0.1225 of the fin's chord behind the fin's, and that chord is √(1.1·1.55·0.829/1.655) = 0.924 m: arm 4.313 m, 0.4474 of the span.
    /// </summary>
    [Fact]
    public void The_rudder_is_what_it_is_by_hand_and_its_arm_is_its_own()
    {
        var d = ContractReader.ReadAirframe(Bare).Value!.Derivatives;

        Assert.Equal(0.1393, d.CYRudder, 5e-4);
        Assert.Equal(-0.0623, d.CnRudder, 3e-4);
        Assert.Equal(0.1393 * 0.0622, d.ClRudder, 2e-4);
        Assert.True(d.CnAileron < 0);
    }

    /// <summary>By hand: 1.2·√6.66·0.4·(1.253/9.64)·2·(1.153/9.64) = 0.0386 of dihedral effect either way.</summary>
    [Fact]
    public void A_high_wing_has_more_dihedral_effect_and_a_low_one_less_and_the_file_says_which()
    {
        Airframe On(string position) => ContractReader.ReadAirframe(Examples.Edited(Bare, "wing.position", $"\"{position}\"")).Value!;
        var (high, mid, low) = (On("high"), On("mid"), On("low"));

        // The fin's part changes with its sidewash as well: 0.4·0.4 of 0.2050·0.0622.
        Assert.Equal(0.0386 - 0.0020, mid.Derivatives.ClBeta - high.Derivatives.ClBeta, 3e-4);
        Assert.Equal(0.0386 - 0.0020, low.Derivatives.ClBeta - mid.Derivatives.ClBeta, 3e-4);
        Assert.True(low.Derivatives.CnBeta > mid.Derivatives.CnBeta && mid.Derivatives.CnBeta > high.Derivatives.CnBeta);
        Assert.Equal(WingPosition.Low, ContractReader.ReadAirframe(ContractWriter.Write(low)).Value!.Wing.Position);
    }

    [Fact]
    public void Without_its_place_on_file_a_strutted_wing_is_high_and_a_cantilever_wing_is_anywhere_and_less_is_known()
    {
        var strutted = ContractReader.ReadAirframe(Bare).Value!;
        var cantilever = ContractReader.ReadAirframe(Examples.Edited(Bare, "wing.bracing", "\"cantilever\"")).Value!;
        var mid = ContractReader.ReadAirframe(Examples.Edited(Examples.Edited(Bare, "wing.bracing", "\"cantilever\""), "wing.position", "\"mid\"")).Value!;

        Assert.Equal(ContractReader.ReadAirframe(Examples.Edited(Bare, "wing.position", "\"high\"")).Value!.Derivatives, strutted.Derivatives);
        Assert.EndsWith("wing taken as high, for it has a strut", Method(strutted, EstimableFigure.ClBeta), StringComparison.Ordinal);
        Assert.EndsWith("wing high, mid or low not on file", Method(cantilever, EstimableFigure.ClBeta), StringComparison.Ordinal);
        Assert.Equal(mid.Derivatives.ClBeta, cantilever.Derivatives.ClBeta, 1e-12);
        Assert.True(Figure(cantilever, EstimableFigure.ClBeta).AccuracyPercent > 2 * Figure(mid, EstimableFigure.ClBeta).AccuracyPercent);
    }

    [Fact]
    public void A_fuselage_on_file_is_used_and_one_that_is_not_is_taken_from_the_span_and_said()
    {
        const string fuselage = """{ "lengthM": 7.23, "depthM": 1.2532, "widthM": 1.0604 }""";
        var (taken, onFile) = (ContractReader.ReadAirframe(Bare).Value!, ContractReader.ReadAirframe(Examples.Edited(Bare, "fuselage", fuselage)).Value!);

        Assert.Contains("taken as 7.2 × 1.25 × 1.06 m by the span", Method(taken, EstimableFigure.CnBeta), StringComparison.Ordinal);
        Assert.DoesNotContain("by the span", Method(onFile, EstimableFigure.CnBeta), StringComparison.Ordinal);
        Assert.Equal(taken.Derivatives.CnBeta, onFile.Derivatives.CnBeta, 1e-6);
        Assert.True(Figure(onFile, EstimableFigure.CYBeta).AccuracyPercent < Figure(taken, EstimableFigure.CYBeta).AccuracyPercent);
    }

    /// <summary>By hand: 0.053·2·1.8²/13.95 = 0.0246 of side force, at 1.9 m ahead 0.0246·1.9/9.64 = 0.0049 against the fin.</summary>
    [Fact]
    public void A_propeller_on_file_pulls_the_nose_out_of_the_wind()
    {
        var (without, with) = (ContractReader.ReadAirframe(Bare).Value!.Derivatives,
            ContractReader.ReadAirframe(Examples.Edited(Bare, "propeller", """{ "diameterM": 1.8, "blades": 2, "armM": 1.9 }""")).Value!.Derivatives);

        Assert.Equal(-0.0246, with.CYBeta - without.CYBeta, 1e-4);
        Assert.Equal(-0.0049, with.CnBeta - without.CnBeta, 1e-4);
    }

    static EstimatedFigure Figure(Airframe airframe, EstimableFigure figure) => airframe.Estimated!.Single(one => one.Figure == figure);

    static string Method(Airframe airframe, EstimableFigure figure) => Figure(airframe, figure).Method;

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
    [InlineData("wing.position", "\"shoulder\"", "$.wing.position")]
    [InlineData("fuselage", """{ "depthM": 20 }""", "$.fuselage.depthM")]
    [InlineData("fuselage", """{ "heightM": 1.2 }""", "$.fuselage.heightM")]
    [InlineData("propeller", """{ "diameterM": 1.8, "armM": 1.9 }""", "$.propeller.blades")]
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
