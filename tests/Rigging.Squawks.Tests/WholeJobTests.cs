using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Tests;

public class WholeJobTests
{
    [Fact]
    public void A_complaint_goes_from_report_to_closed_through_every_act()
    {
        var closed = School.Closed;

        Assert.Equal(Stage.Closed, closed.State.Stage);
        Assert.Equal(FlightStatus.MayFly, closed.State.FlightStatus);
        Assert.Equal(
            ["work-done", "independent-inspection", "approval", "check-flight", "closing"],
            closed.Entries.Where(e => e.Signature is not null).Select(e => EntryCodec.KindOf(e.Fact)));
    }

    [Fact]
    public void What_is_stored_reads_back_as_what_was_entered()
    {
        foreach (var entry in School.Closed.Entries)
        {
            var payload = EntryCodec.Write(entry);
            var again = EntryCodec.Read(entry.Sequence, EntryCodec.KindOf(entry.Fact), EntryCodec.VersionOf(entry.Fact), payload);
            Assert.Equal(payload, EntryCodec.Write(again));
        }
    }

    [Fact]
    public void The_record_entry_holds_every_element_the_rule_asks_for()
    {
        var record = School.Approved.State.Approval!.Value.Fact.RecordEntry;

        Assert.All(
            (string[])["57-10", "revision C", "front −15°, rear −15°", "front 15°, rear 15°", "3/8-24", "run-on 15", "TW-3", "calibration due 2026-04-01", "self-locking nut",
                "left aileron cable tension", "Completed 2026-03-02", "Total time 1234.5", "mechanic, airframe rating", "[certificate:", $"[person:{School.Inspector.Id}]", $"[person:{School.Mechanic.Id}]"],
            wanted => Assert.Contains(wanted, record, StringComparison.Ordinal));
    }
}
