using System.Text.Json.Nodes;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>What the aircraft cannot fly or hold is refused when it is entered, on every form alike: stall 46 kt, flap 85 kt, never exceed 140 kt, 42 L in a tank.</summary>
public class FlyingLimitsTests
{
    static string Point(double casKt = 95, double flapDeg = 0, double bankDeg = -6, double fuelL = 25, string kind = "bank-after") =>
        new JsonArray(new JsonObject
        {
            ["manoeuvre"] = "release-wheel",
            ["casKt"] = casKt,
            ["pressureAltitudeFt"] = 3000,
            ["flapDeg"] = flapDeg,
            ["load"] = new JsonObject { ["seatsKg"] = new JsonObject { ["left"] = 77, ["right"] = 77 }, ["fuelL"] = new JsonObject { ["left"] = fuelL, ["right"] = 25 } },
            ["readings"] = new JsonArray(new JsonObject { ["kind"] = kind, ["seconds"] = 10, ["deg"] = bankDeg }),
        }).ToJsonString();

    static IReadOnlyList<BrokenRule> Refusals(Ledger ledger, Person who, Fact fact) => Try(ledger, who, fact) is Decision.Refused refused ? refused.Broken : [];

    public static TheoryData<string, string, string, string> Beyond => new()
    {
        { Point(casKt: 45), "testPoints[0].casKt", "45", "46" },
        { Point(casKt: 141), "testPoints[0].casKt", "141", "140" },
        { Point(casKt: 86, flapDeg: 10), "testPoints[0].casKt", "86", "85" },
        { Point(bankDeg: -61), "testPoints[0].readings[0].deg", "−61", "60" },
        { Point(bankDeg: 75, kind: "time-to-bank"), "testPoints[0].readings[0].deg", "75", "60" },
        { Point(fuelL: 400), "testPoints[0].load.fuelL.left", "400", "tank" },
    };

    [Theory, MemberData(nameof(Beyond))]
    public void A_flights_readings_beyond_the_aircraft_are_refused_with_field_value_and_what_was_wanted(string points, string field, string seen, string wanted)
    {
        foreach (var (ledger, fact) in ((Ledger, Fact)[])[(School.Called, new EvaluationFlown(Today, points, null)), (School.Approved, Flight with { TestPoints = points })])
        {
            var broken = Assert.Single(Refusals(ledger, Pilot, fact));
            Assert.Equal(field, broken.Field);
            Assert.Contains(seen, broken.Sentence, StringComparison.Ordinal);
            Assert.Contains(wanted, broken.Sentence, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(46, 0, 60)]
    [InlineData(140, 0, -60)]
    [InlineData(85, 10, 6)]
    [InlineData(40, 30, 6)]
    public void What_the_aircraft_can_do_is_taken(double casKt, double flapDeg, double bankDeg)
    {
        var points = Point(casKt, flapDeg, bankDeg);
        Assert.Empty(Refusals(School.Called, Pilot, new EvaluationFlown(Today, points, null)));
        Assert.Empty(Refusals(School.Approved, Pilot, Flight with { TestPoints = points }));
        Assert.Empty(Refusals(Empty, Pilot, Report with { CasKt = casKt, FlapDeg = flapDeg, BankDeg = bankDeg }));
    }

    static readonly (Reported Report, string Field, string Seen)[] Reports =
    [
        (Report with { CasKt = 45 }, "casKt", "45"),
        (Report with { CasKt = 141 }, "casKt", "141"),
        (Report with { CasKt = 86, FlapDeg = 10 }, "casKt", "86"),
        (Report with { BankDeg = -61 }, "bankDeg", "−61"),
        (Report with { FuelLeftL = 400 }, "fuelLeftL", "400"),
        (Report with { FuelRightL = 400 }, "fuelRightL", "400"),
    ];

    [Fact]
    public void So_are_a_reports() => Assert.All(Reports, said =>
    {
        var broken = Assert.Single(Refusals(Empty, Pilot, said.Report));
        Assert.Equal(("value-out-of-range", said.Field), (broken.Code, broken.Field));
        Assert.Contains(said.Seen, broken.Sentence, StringComparison.Ordinal);
    });

    /// <summary>A report that grounds the aircraft is never held up by a number in it: the limit passed may be what is reported.</summary>
    [Fact]
    public void A_danger_is_reported_with_whatever_was_on_the_dials() => Assert.All(Reports, said =>
    {
        Assert.Empty(Refusals(Empty, Pilot, said.Report with { RedFlags = [RedFlag.FullOrNearlyFullControl] }));
        Assert.Empty(Refusals(Empty, Pilot, said.Report with { Happened = [Happening.FlapOverspeed] }));
    });
}
