using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;

namespace Rigging.Squawks.Tests;

public class EvidenceTests
{
    const string OnePoint = """
        [{ "manoeuvre": "hold-level", "casKt": 95, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77 }, "fuelL": { "left": 25, "right": 30 } },
           "readings": [{ "kind": "ball", "widths": 0.1, "method": "eye" }] }]
        """;

    static AssessmentRequest Read(Ledgers.Ledger ledger)
    {
        var read = ContractReader.ReadRequest(EvidenceRequest.Of(ledger, School.Airframe).Json);
        Assert.Empty(read.Faults);
        return read.Value!;
    }

    [Fact]
    public void Report_and_checks_become_a_request_that_the_endpoint_accepts()
    {
        var request = Read(School.Checked);

        var point = Assert.Single(request.TestPoints);
        Assert.Equal((Manoeuvre.ReleaseWheel, 95.0), (point.Manoeuvre, point.CasKt));
        Assert.Equal(new BankAfter(10, -6) { Method = ReadingMethod.Eye }, Assert.Single(point.Readings));
        Assert.Contains(request.GroundChecks, check => check is AngleCheck { Kind: GroundCheckKind.FlapDifference, Deg: 0.1 });
        Assert.Contains(request.GroundChecks, check => check is ClearanceCheck { Clear: true });
        Assert.Equal([new PastEvent(EventKind.WingRemoved)], request.Events);
    }

    [Fact]
    public void A_report_without_numbers_says_what_was_assumed()
    {
        var vague = School.Report with
        {
            CasKt = null,
            PressureAltitudeFt = null,
            PowerPercent = null,
            BankDeg = null,
            BankAfterS = null,
            FuelLeftL = null,
            FuelRightL = null,
            FuelMethod = FuelMethod.NotKnown,
            SeatLeftKg = null,
            SeatRightKg = null,
            Strength = Entries.RollStrength.NotRecorded,
        };

        var ledger = School.Empty.Do(School.Pilot, vague);

        Assert.Equal(new Rolls(RollSide.Left, Mechanics.Contract.RollStrength.Slowly), Assert.Single(Read(ledger).TestPoints[0].Readings));
        Assert.Equal(6, EvidenceRequest.Of(ledger, School.Airframe).Assumed.Count);
    }

    [Fact]
    public void Flights_made_before_the_work_do_not_speak_about_the_aircraft_after_it()
    {
        var flown = School.Called.Do(School.Pilot, new EvaluationFlown(School.Today, OnePoint, null));
        Assert.Equal(2, Read(flown).TestPoints.Count);

        var after = School.Approved.Do(School.Pilot, School.Flight with { TestPoints = OnePoint });
        Assert.Equal(30, Assert.Single(Read(after).TestPoints).Load.FuelL["right"]);
        Assert.Equal(new Mechanics.Contract.BushingAngles(15), Read(after).Settings!.LeftEccentricDeg);
    }

    [Fact]
    public void A_reading_that_cannot_be_is_refused_by_its_place_in_the_list()
    {
        var refused = Assert.IsType<Rules.Decision.Refused>(
            School.Try(School.Called, School.Pilot, new EvaluationFlown(School.Today, OnePoint.Replace("95", "900", StringComparison.Ordinal), null)));

        var broken = Assert.Single(refused.Broken);
        Assert.Equal(("test-points-unreadable", "testPoints[0].casKt"), (broken.Code, broken.Field));
    }
}
