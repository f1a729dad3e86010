using NodaTime;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Web.Drawings;
using Rigging.Web.Paper;

namespace Rigging.Web.Tests.Paper;

/// <summary>An invented maintenance record entry, long enough for more than one page.</summary>
static class SampleSheet
{
    public const string Hash = "3f9ac2d41e07b85a6c1d9e2f4b7083a5d6e1c2f3a4b5968778695a4b3c2d1e0f";

    public static Sheet Record(Stock stock = Stock.A4, IReadOnlyList<Block>? blocks = null) => new(
        "Maintenance record entry: wing rigging", "Invented Flying School", "Squawk S-12 · Q-ABCD", Hash,
        new LocalDateTime(2026, 3, 4, 14, 2).InZoneStrictly(DateTimeZone.Utc), blocks ?? Blocks, stock);

    static readonly IReadOnlyList<Block> Blocks =
    [
        new Facts([("Aircraft", "Q-ABCD, st2, serial 0417"), ("Total time", "3412.6 h"), ("Completed", "4 March 2026"), ("Complaint", "Left wing heavy, hands off: rolls left 4° in 10 s at 105 kt, ball centred")]),
        new Heading("What was done"),
        new Paragraph("Turned the eccentric bushing at the left rear-spar attachment ½ flat, trailing edge down, in accordance with the maintenance manual, section 57-20, revision 4. Wing supported at the strut, one side at a time; bolt loosened and not withdrawn. Predicted tendency before −0.80 °/s, after −0.10 ± 0.25 °/s (limit ≤ 0.30 °/s)."),
        new Figure(EccentricView.Draw(new(Side.Left, -15, 15, 75, 6, BushingIn.FuselageFitting, Spanwise.Inboard), Face.Rear)),
        new Heading("Settings"),
        new Table([new("Setting", 3), new("As found", 1, Figures: true), new("As left", 1, Figures: true)],
            [["Left eccentric, front bushing", "−15°", "15°"], ["Left eccentric, rear bushing", "−15°", "15°"], ["Right eccentric, both bushings", "0°", "0°"], ["Left panel incidence against fuselage datum, measured at the root rib with the flaps up and the fuel level in both tanks", "1.38°", "1.49°"]]),
        new Heading("Torque"),
        new Table([new("Fastener", 2), new("Run-on", 1, true), new("Final", 1, true), new("Wrench", 1.2), new("Due", 1)],
            [["Left rear-spar bolt, nut turned, dry", "12 lbf·in", "252 lbf·in", "TW-3, 50 to 500 lbf·in", "2026-09-30"]]),
        new Caution("The cable tension and the travel of both ailerons were reset after the wing was moved. Check them again at the next inspection, with the torque and the witness mark."),
        new Signature("Independent inspection", "I did not do this work. I saw the right aileron go up and the left go down for a right wheel, full travel at every flap setting, and every fastener that was disturbed secured.", "Dora Fenn", "IA 0000217, inspection authorization", "4 March 2026, 15:10", "Signed in the ledger, entry 14, after re-authentication"),
        new Signature("Approval for return to service", "The work described above was done in accordance with the data cited, and the aircraft is approved for return to service with respect to it. Passengers are barred until the check flight is logged.", "Ciro Vane", "A 0000184, airframe rating", ""),
    ];
}
