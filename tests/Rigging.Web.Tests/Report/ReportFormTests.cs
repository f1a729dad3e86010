using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Web.Desk;
using Rigging.Web.Report;

namespace Rigging.Web.Tests.Report;

public class ReportFormTests
{
    static readonly AircraftId Plane = new(Guid.CreateVersion7());
    static readonly Dictionary<string, ReportableAircraft> Fleet = new()
    {
        ["Q-101"] = new(Plane, "Q-101", "ST-2", FlightStatus.MayFly, TankLeftL: 50, TankRightL: 60),
        ["Q-102"] = new(Plane, "Q-102", "ST-4", FlightStatus.MayFly),
    };

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
    [InlineData("-0.5", -0.5)]
    [InlineData("1.5", 1.5)]
    [InlineData("0.0", 0.0)]
    [InlineData("", null)]
    public void The_ball_is_where_it_was_tapped(string tapped, double? widths) => Assert.Equal(widths, Read(("ball", tapped)).BallWidths);

    [Theory]
    [InlineData("let-go", Hands.Released, Feet.Off)]
    [InlineData("let-go-ball", Hands.Released, Feet.BallCentred)]
    [InlineData("let-go-pedals", Hands.Released, Feet.OnPedals)]
    [InlineData("neutral", Hands.HeldNeutral, Feet.BallCentred)]
    [InlineData("held", Hands.HoldingLevel, Feet.Off)]
    [InlineData("held-ball", Hands.HoldingLevel, Feet.BallCentred)]
    [InlineData("", Hands.NotRecorded, Feet.NotRecorded)]
    public void One_tap_says_what_hands_and_feet_did(string tapped, Hands hands, Feet feet) =>
        Assert.Equal((hands, feet), Read(("doing", tapped)) is var report ? (report.Hands, report.Feet) : default);

    [Fact]
    public void A_tap_and_words_of_ones_own_stand_together()
    {
        var report = Read(("since", "Some weeks"), ("sinceWhen", "since the annual"), ("last", "Paint"));

        Assert.Equal(("Some weeks. since the annual", "Paint"), (report.SinceWhen, report.LastWork));
    }

    [Fact]
    public void What_is_on_record_as_done_last_is_one_tap()
    {
        var lately = new Lately(Plane, "Q-101", "ST-2", FlightStatus.MayFly, new("School", NodaTime.DateTimeZone.Utc, "united-states"),
            [new(3, new(2026, 3, 2), "Monday", ["left aileron cables"], [], true)], []);
        const string offered = "S-3: left aileron cables (2026-03-02)";

        Assert.Equal(offered, ReportForm.Read(Least(("last", offered)), Fleet, lately).Report!.LastWork);
        Assert.Equal("last", Wrong(("last", offered)).Field);
    }

    [Fact]
    public void Who_sat_where_is_kept_when_nobody_was_weighed()
    {
        var report = Read(("aboard", nameof(Aboard.AloneLeft)));

        Assert.Equal((Aboard.AloneLeft, null, null), (report.Aboard, report.SeatLeftKg, report.SeatRightKg));
    }

    [Fact]
    public void Miles_an_hour_become_knots() => Assert.Equal(95.6, Read(("speedUnit", "mph"), ("casKt", "110")).CasKt);

    [Theory]
    [InlineData("½", 25)]
    [InlineData("3/4", 37.5)]
    [InlineData("0,2", 10)]
    [InlineData("full", 50)]
    [InlineData(" Empty ", 0)]
    public void A_part_of_a_tank_becomes_litres(string typed, double litres) =>
        Assert.Equal(litres, Read(("fuelUnit", "tank"), ("fuelMethod", "Gauge"), ("fuelLeftL", typed), ("fuelRightL", "full")).FuelLeftL);

    [Theory]
    [InlineData("2/0")]
    [InlineData("1.5")]
    [InlineData("-½")]
    [InlineData("some")]
    public void What_is_no_part_of_a_tank_is_said(string typed) =>
        Assert.Equal(("fuelLeftL", $"Fuel left: “{typed}” is not a part of a tank. Wanted one like ½, 3/4 or full."), Wrong(("fuelUnit", "tank"), ("fuelLeftL", typed)));

    [Fact]
    public void A_part_of_a_tank_nobody_knows_is_not_guessed_at() => Assert.Contains("is not on file", Wrong(("aircraft", "Q-102"), ("fuelUnit", "tank"), ("fuelLeftL", "½")).Sentence, StringComparison.Ordinal);

    [Theory]
    [InlineData("20", "", 20.0)]
    [InlineData("", "35", 35.0)]
    [InlineData("10", "−8", -8.0)]
    [InlineData("", "", null)]
    public void The_flap_is_tapped_or_typed(string tapped, string typed, double? deg) => Assert.Equal(deg, Read(("flapDeg", tapped), ("flapOtherDeg", typed)).FlapDeg);

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
    [InlineData("bankDeg", "5", "bankSide", "to which side?")]
    [InlineData("bankSide", "Left", "bankDeg", "Say how much")]
    [InlineData("bankDeg", "-1", "bankDeg", "−1° cannot be")]
    [InlineData("ball", "0.7", "ball", "“0.7” is not one of the choices")]
    [InlineData("doing", "sleeping", "doing", "“sleeping” is not one of the choices")]
    [InlineData("since", "yore", "since", "“yore” is not one of the choices")]
    [InlineData("aboard", "Nobody", "aboard", "“Nobody” is not one of the choices")]
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
    public void A_tick_beside_none_of_these_grounds_and_says_that_both_were_tapped()
    {
        var typed = TypedFields.Read("""{"aircraft":"Q-101","words":"Bang.","rollsTo":"Left","redFlags":["Bang","none"]}""");

        var (report, errors) = ReportForm.Read(typed, Fleet);
        Assert.Empty(errors);
        Assert.Equal([RedFlag.Bang], report!.RedFlags);
        Assert.Contains(report.Unread!, line => line.StartsWith("“None of these” and something else", StringComparison.Ordinal));
    }

    [Fact]
    public void A_danger_files_with_nothing_but_the_aircraft_and_keeps_what_cannot_be_read()
    {
        var (bare, none) = ReportForm.Read(TypedFields.Read("""{"aircraft":"Q-101","redFlags":["HardLanding"]}"""), Fleet);
        Assert.Empty(none);
        Assert.Equal((Happening.HardLanding, "", Side.NotRecorded, null), (Assert.Single(bare!.Happened), bare.Words, bare.RollsTo, bare.Unread));

        var (report, errors) = ReportForm.Read(TypedFields.Read("""{"aircraft":"Q-101","redFlags":["ControlJammed"],"casKt":"ninety","bankDeg":"12","words":"Stiff."}"""), Fleet);
        Assert.Empty(errors);
        Assert.Equal((RedFlag.ControlJammed, "Stiff.", null), (Assert.Single(report!.RedFlags), report.Words, report.CasKt));
        Assert.Contains(report.Unread!, line => line.Contains("ninety", StringComparison.Ordinal));
        Assert.Contains(report.Unread!, line => line.StartsWith("Bank 12°: to which side?", StringComparison.Ordinal));

        Assert.Equal("aircraft", Assert.Single(ReportForm.Read(TypedFields.Read("""{"redFlags":["HardLanding"],"words":"Hard.","rollsTo":"Left"}"""), Fleet).Errors).Field);
    }

    [Fact]
    public void Every_danger_is_asked_once_and_first_and_the_rest_is_history()
    {
        Assert.Equal([.. Enum.GetNames<RedFlag>().Concat(GroundingQuestions.Happenings.Select(danger => danger.ToString())).Order()], Dangers.Choices.Select(choice => choice.Value).Order());
        Assert.Equal(["Repaint", "CablesAdjusted", "StormParking"], Choices.Happened.Select(choice => choice.Value));
    }

    [Fact]
    public void Every_happening_and_red_flag_can_be_reported()
    {
        var all = string.Join(',', Dangers.Choices.Select(choice => $"\"{choice.Value}\""));
        var happened = string.Join(',', Choices.Happened.Select(choice => $"\"{choice.Value}\""));

        var tried = string.Join(',', Choices.WithoutEffect.Select(choice => $"\"{choice.Value}\""));
        var report = ReportForm.Read(TypedFields.Read($$"""{"aircraft":"Q-101","words":"Bang.","rollsTo":"Left","redFlags":[{{all}}],"happened":[{{happened}}],"withoutEffect":[{{tried}}]}"""), Fleet).Report!;

        Assert.Equal(Enum.GetValues<RedFlag>(), report.RedFlags.Order());
        Assert.Equal(Enum.GetValues<Happening>(), report.Happened.Order());
        Assert.Equal(Enum.GetValues<Tried>(), report.WithoutEffect);
    }
}
