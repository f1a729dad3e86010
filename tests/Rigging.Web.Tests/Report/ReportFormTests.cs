using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Web.Desk;
using Rigging.Web.Report;

namespace Rigging.Web.Tests.Report;

public class ReportFormTests
{
    static readonly AircraftId Plane = new(Guid.CreateVersion7());
    static readonly Dictionary<string, AircraftId> Fleet = new() { ["Q-101"] = Plane };

    static TypedFields Least(params (string Name, string Value)[] more)
    {
        var typed = new TypedFields { ["aircraft"] = "Q-101", ["words"] = "Pulls left.", ["rollsTo"] = "Left", ["redFlags"] = "none" };
        foreach (var (name, value) in more) typed[name] = value;
        return typed;
    }

    static Reported Read(params (string Name, string Value)[] more)
    {
        var (report, errors) = ReportForm.Read(Least(more), Fleet);
        Assert.Empty(errors);
        return report!;
    }

    static (string? Field, string Sentence) Wrong(params (string Name, string Value)[] more)
    {
        var (report, errors) = ReportForm.Read(Least(more), Fleet);
        Assert.Null(report);
        var error = Assert.Single(errors);
        return (error.Field, error.Sentence);
    }

    [Fact]
    public void A_report_may_know_little_and_nothing_is_made_up()
    {
        var report = Read();

        Assert.Equal((Plane, "Pulls left.", Side.Left), (report.Aircraft, report.Words, report.RollsTo));
        Assert.Equal((RollStrength.NotRecorded, Hands.NotRecorded, Feet.NotRecorded, FuelMethod.NotKnown), (report.Strength, report.Hands, report.Feet, report.FuelMethod));
        Assert.All((double?[])[report.CasKt, report.PressureAltitudeFt, report.PowerPercent, report.FlapDeg, report.BallWidths, report.BankDeg, report.BankAfterS,
            report.FuelLeftL, report.FuelRightL, report.SeatLeftKg, report.SeatRightKg], value => Assert.Null(value));
        Assert.Null(report.StraightBefore);
        Assert.Empty(report.RedFlags);
    }

    [Fact]
    public void The_words_are_kept_as_they_were_typed()
    {
        const string words = "  left… «½ ball»\r\n\r\n and  back ";

        Assert.Equal(words, Read(("words", words)).Words);
    }

    [Theory]
    [InlineData("Left", "0,5", -0.5)]
    [InlineData("Right", "0.5", 0.5)]
    [InlineData("None", "", 0)]
    public void The_ball_gets_its_sign_from_the_side(string side, string widths, double value) =>
        Assert.Equal(value, Read(("ballSide", side), ("ballWidths", widths)).BallWidths);

    [Fact]
    public void A_bank_to_the_left_is_negative_inside() =>
        Assert.Equal((-6, 10), (Read(("bankSide", "Left"), ("bankDeg", "6"), ("bankAfterS", "10")) is var report ? (report.BankDeg, report.BankAfterS) : default));

    [Fact]
    public void Gallons_and_pounds_become_litres_and_kilograms()
    {
        var report = Read(("fuelUnit", "gal"), ("fuelLeftL", "10"), ("fuelRightL", "0"), ("fuelMethod", "Dip"), ("seatUnit", "lb"), ("seatLeftKg", "170"));

        Assert.Equal((37.85, 0), (report.FuelLeftL, report.FuelRightL));
        Assert.Equal(77.11, report.SeatLeftKg);
    }

    [Fact]
    public void A_refusal_speaks_in_the_unit_that_was_typed() =>
        Assert.Equal(("fuelLeftL", "Fuel left 300 US gal cannot be: wanted 0 to 264 US gal."), Wrong(("fuelUnit", "gal"), ("fuelLeftL", "300")));

    [Theory]
    [InlineData("casKt", "ninety", "casKt", "“ninety” is not a number")]
    [InlineData("ballWidths", "0.5", "ballSide", "to which side?")]
    [InlineData("ballSide", "Left", "ballWidths", "Say how much")]
    [InlineData("ballWidths", "-1", "ballWidths", "−1 widths cannot be")]
    [InlineData("aircraft", "N-1", "aircraft", "“N-1” is not in the fleet")]
    [InlineData("aircraft", "", "aircraft", "nothing chosen")]
    [InlineData("words", " ", "words", "in your own words")]
    [InlineData("rollsTo", "", "rollsTo", "nothing chosen")]
    [InlineData("rollsTo", "Up", "rollsTo", "“Up” is not one of the choices")]
    [InlineData("strength", "Wildly", "strength", "“Wildly” is not one of the choices")]
    [InlineData("straightBefore", "perhaps", "straightBefore", "“perhaps” is not one of the choices")]
    [InlineData("happened", "Rain", "happened", "“Rain” is not one of the choices")]
    [InlineData("redFlags", "", "redFlags", "none of these")]
    [InlineData("redFlags", "Noise", "redFlags", "“Noise” is not one of the choices")]
    public void What_cannot_be_is_named_with_its_field(string name, string value, string field, string says)
    {
        var (wrongField, sentence) = Wrong((name, value));

        Assert.Equal(field, wrongField);
        Assert.Contains(says, sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void None_of_these_beside_a_red_flag_is_a_contradiction()
    {
        var typed = TypedFields.Read("""{"aircraft":"Q-101","words":"Bang.","rollsTo":"Left","redFlags":["Bang","none"]}""");

        Assert.Equal("contradiction", Assert.Single(ReportForm.Read(typed, Fleet).Errors).Code);
    }

    [Fact]
    public void Every_happening_and_red_flag_can_be_reported()
    {
        var all = string.Join(',', Enum.GetNames<RedFlag>().Select(name => $"\"{name}\""));
        var happened = string.Join(',', Choices.Happened.Select(choice => $"\"{choice.Value}\""));

        var report = ReportForm.Read(TypedFields.Read($$"""{"aircraft":"Q-101","words":"Bang.","rollsTo":"Left","redFlags":[{{all}}],"happened":[{{happened}}]}"""), Fleet).Report!;

        Assert.Equal(Enum.GetValues<RedFlag>(), report.RedFlags);
        Assert.Equal(Enum.GetValues<Happening>(), report.Happened);
    }
}
