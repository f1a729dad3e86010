using System.Globalization;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Rigging.EndToEnd;

/// <summary>The main job, in a browser, by the people who do it: a student pilot reports, a mechanic works, an inspector inspects and certifies, a rated pilot flies.</summary>
public class JourneyTests(RunningSite site)
{
    /// <summary>Everybody at the window they have most; in a long run then everybody at each of the others.</summary>
    public static IEnumerable<TheoryDataRow<int?, int?>> Windows() =>
        [new(null, null), .. Sizes.Further.Select(size => new TheoryDataRow<int?, int?>(size.Width, size.Height))];

    [Theory, MemberData(nameof(Windows))]
    public async Task A_report_from_a_phone_becomes_a_signed_return_to_service_and_a_closed_complaint(int? width, int? height)
    {
        Task<Visitor> Arrives(string who, int usualWidth, int usualHeight) => Visitor.Arrives(site, $"{who}@quietvalley.example", width ?? usualWidth, height ?? usualHeight);
        await using var student = await Arrives("wren", 390, 844);
        await using var mechanic = await Arrives("jude", 820, 1180);
        await using var inspector = await Arrives("edda", 1280, 900);
        await using var pilot = await Arrives("ilse", 390, 844);
        await inspector.Sees("QRA-101");
        await inspector.Keeps("ramp");

        var n = await Reports(student);
        await Calls(mechanic, n);
        await Checks(mechanic, n);
        await Agrees(mechanic, n);
        await Works(mechanic, n);
        await IsRefusedTheInspectionOfOwnWork(mechanic, n);
        await AfterWork.Inspects(inspector, n, "Turned both bushings", "inspection", "Attachment, stripe, cables, fairing, travel looked at. Right wing not opened.");
        await AfterWork.Approves(inspector, n);
        await inspector.Keeps("story");
        await AfterWork.Flies(pilot, n, "left aileron cables", "check-flight", ("durationH", "0.8"), ("fuel-left", "20"), ("fuel-right", "26"), ("seat-left", "77"), ("seat-right", "75"), ("pressureAltitudeFt", "3000"),
            ("release1.casKt", "95"), ("release1.seconds", "10"), ("release1.side", "right"), ("release1.bankDeg", "3"), ("remarks", "Very slightly right-wing heavy; the right tank was fuller."));
        await AfterWork.Accepts(mechanic, n, "verdict");
        await AfterWork.Closes(inspector, n, "Flies straight; what little is left the fuller right tank explains.");
        await TheRecordHoldsEveryElement(inspector, n);
        Assert.Empty((string[])[.. student.Amiss, .. mechanic.Amiss, .. inspector.Amiss, .. pilot.Amiss]);
    }

    static async Task<int> Reports(Visitor student)
    {
        await student.Goes("/report/QRA-101");
        await student.Keeps("report");
        await student.Page.GetByText("Do you know more of its history?").ClickAsync();
        await student.Sets(("words", "Let go of it and the left wing goes down by itself."), ("rollsTo", "Left"), ("strength", "Slowly"), ("doing", "let-go-ball"),
            ("redFlags", "none"), ("fuelMethod", "Dip"), ("fuelUnit", "l"), ("fuelLeftL", "25"), ("fuelRightL", "25"), ("aboard", "TwoUp"),
            ("sinceWhen", "since the wing was off"), ("happened", "Repaint"));
        await student.Page.GetByText("Can you add numbers?").ClickAsync();
        await student.Sets(("casKt", "95"), ("seatUnit", "kg"), ("seatLeftKg", "77"), ("seatRightKg", "77"), ("bankSide", "Left"), ("bankDeg", "6"), ("bankAfterS", "10"));
        await student.Presses("Send the report");
        await student.Page.WaitForURLAsync("**/receipt**");
        var number = int.Parse((await student.Page.Locator("h1 .mono").InnerTextAsync())["S-".Length..], CultureInfo.InvariantCulture);
        await student.Sees($"S-{number}");
        return number;
    }

    static async Task Calls(Visitor mechanic, int n)
    {
        await mechanic.Goes($"/squawks/{n}/call");
        await mechanic.Sets(("call", "MayFlyWithLimits"), ("limits", "No students; day, smooth air."), ("reason", "Looked it over after the report; controls free and correct."));
        await mechanic.Presses("Make the call");
        await mechanic.IsAt($"/squawks/{n}");
    }

    static async Task Checks(Visitor mechanic, int n)
    {
        (string Check, (string, string)[] Fields)[] checks =
        [
            ("fuel-and-seats", [("fuel0", "25"), ("fuel1", "25"), ("finding", "Dipped level; seats empty for the survey.")]),
            ("ball-offset", [("way", "none")]),
            ("damage-inspection", [("clear", "yes"), ("finding", "Attach fittings, struts, skins, leading edges: no damage.")]),
            ("flap-difference", [("way", "none")]),
            ("aileron-neutral-offset", [("way", "none")]),
            ("cable-tension", [("cable", "left aileron"), ("value", "160"), ("temperatureC", "18"), ("tool", "TM-1")]),
            ("rudder-tab", [("way", "none")]),
            ("panel-incidence-difference", [("way", "plus"), ("value", "0.10"), ("sd", "0.05")]),
        ];
        foreach (var (check, fields) in checks)
        {
            await AfterWork.Measures(mechanic, n, check, fields);
        }
        await mechanic.Goes($"/squawks/{n}/checks?check=marks");
        await mechanic.Sets(("leftFrontDeg", "15"), ("leftFrontDegWay", "up"), ("leftRearDeg", "15"), ("leftRearDegWay", "up"), ("rightFrontDeg", "0"), ("rightRearDeg", "0"));
        await mechanic.Presses("Record the marks");
        await mechanic.Page.WaitForURLAsync("**/checks?saved=**");
        await mechanic.Sees("All seven are on record");
        await mechanic.Keeps("checks");
    }

    static async Task Agrees(Visitor mechanic, int n)
    {
        await mechanic.Goes($"/squawks/{n}/assessment");
        await mechanic.Sees("Put it on record");
        await mechanic.Keeps("assessment");
        await mechanic.Presses("Record this assessment");
        await mechanic.Sees("This assessment is on record.");
        await mechanic.Sets(("plan", "own"), ("control", "LeftEccentric"), ("from", "15"), ("fromWay", "minus"), ("to", "15"), ("toWay", "plus"),
            ("instruction", "Left wing: trailing edge down, half a flat, both bushings together."), ("confirmed", "true"), ("reason", "Panel incidence measured and felt; smallest move that takes out the old offset."));
        await mechanic.Presses("Agree this correction");
        await mechanic.Sees("correction agreed");
    }

    /// <summary>The wrong way is refused, half the size is asked about, and the move is made only when the measurement proves it.</summary>
    internal static async Task Proves(Visitor mechanic, string control, string tool, string opposite, string way, string half, string whole)
    {
        string Field(string what) => $"done.movement{control}.{what}";
        var made = mechanic.Page.Locator("[name='move.done']");
        await Assertions.Expect(made).ToBeDisabledAsync();
        await mechanic.Sets((Field("tool"), await mechanic.ChoiceOf(Field("tool"), tool)), (Field("amount"), whole), (Field("way"), opposite));
        await mechanic.Sees("Stop: turn it back to where it was found");
        await mechanic.Keeps($"proof-wrong-way-{control}");
        await Assertions.Expect(made).ToBeDisabledAsync();
        await mechanic.Sets((Field("way"), way), (Field("amount"), half));
        await mechanic.Sees("Measure it again. If it stays so, write why.");
        await mechanic.Keeps($"proof-half-{control}");
        await Assertions.Expect(made).ToBeDisabledAsync();
        await mechanic.Sets((Field("amount"), whole));
        await mechanic.Sees("The direction is proved");
        await mechanic.Keeps($"proof-{control}");
    }

    static async Task Works(Visitor mechanic, int n)
    {
        await mechanic.Goes($"/squawks/{n}/work");
        await mechanic.Sets(("start.wingSupport", "Padded stand under the left strut fitting, 57-10."));
        await mechanic.Presses("Start the work");
        // As found stands already: the marks were read during the checks.
        await mechanic.Sees("The work is started.");
        await mechanic.Keeps("work");
        await mechanic.Sets(("move.held", "true"), ("move.loosened", "true"), ("move.free", "true"), ("move.zeroed", "true"));
        // Half a flat turns the wing 0.06°: a level that shows 0.05° at a time sees one step or two.
        await mechanic.Sets(("done.movementLeftEccentric.tool", await mechanic.ChoiceOf("done.movementLeftEccentric.tool", "INC-1")), ("done.movementLeftEccentric.amount", "0.05"), ("done.movementLeftEccentric.way", "Down"));
        await mechanic.Sees("it must be at least two steps");
        await Proves(mechanic, "LeftEccentric", "DI-1", opposite: "Up", way: "Down", half: "0.46", whole: "0.93");
        // Pressed and not waited for: with this tick the step is over, and its box goes.
        await mechanic.Page.Locator("[name='move.done']").ClickAsync();
        await mechanic.Sets(("torque.fastener", "Left rear spar attachment bolt, 3/8-24"), ("torque.source", "file"), ("torque.threads", "dry"), ("torque.turned", "nut"), ("torque.nut", "self-locking"), ("torque.runOnInLb", "15"));
        await mechanic.Sets(("torque.wrench", await mechanic.ChoiceOf("torque.wrench", "TW-1")));
        await mechanic.Sees("175 to 205");
        await mechanic.Sets(("torque.settingInLb", "190"), ("torque.torqueStripe", "true"));
        await mechanic.Presses("Record this torque application");
        await mechanic.Sees("The torque application is on record.");
        await AfterWork.MeasuresAgain(mechanic, n, 160);
        await mechanic.Goes($"/squawks/{n}/work");
        // Left otherwise than planned, the page says so at once, and what is expected of it.
        await mechanic.Sets(("done.leftFront.way", "neutral"), ("done.leftRear.way", "neutral"));
        await mechanic.Sees("is left neutral; the plan said 15° trailing edge down.");
        await mechanic.Sees("The model expects");
        await mechanic.Sets(("done.description", "Turned both bushings of the left eccentric half a flat, trailing edge down."),
            ("done.leftFront.way", "down"), ("done.leftFront", "15"), ("done.leftRear.way", "down"), ("done.leftRear", "15"), ("done.rightFront.way", "neutral"), ("done.rightRear.way", "neutral"),
            ("done.disturbed", "left rear spar attachment\nleft aileron cables"), ("done.surfaceAilerons", "yes"), ("done.surfaceFlaps", "no"), ("done.surfaceRudder", "no"), ("done.surfaceElevator", "no"),
            ("done.reset0.what", "flap travel"), ("done.reset0.result", "as the manual says"),
            ("done.part0.quantity", "1"), ("done.part0.description", "self-locking nut 3/8-24"), ("done.part0.number", "Q-365-624"),
            ("done.toolsOut", "14"), ("done.toolsBack", "14"), ("done.everythingRefitted", "true"), ("done.noTemporaryHardware", "true"), ("done.nothingLoose", "true"), ("done.manHours", "2.5"), ("done.totalTimeH", "4321.5"), ("done.completedOn", await mechanic.Today()));
        await mechanic.Keeps("work-done");
        await mechanic.Presses("Go on to sign");
        await mechanic.Signs(n, "work-done");
    }

    static async Task IsRefusedTheInspectionOfOwnWork(Visitor mechanic, int n)
    {
        await mechanic.Goes($"/squawks/{n}/inspection");
        await mechanic.Sees("You took part in this work");
        Assert.True(await mechanic.Page.GetByText("Go on to sign").First.IsDisabledAsync());
    }

    static async Task TheRecordHoldsEveryElement(Visitor inspector, int n)
    {
        var answer = await inspector.Page.APIRequest.GetAsync($"/squawks/{n}/record.pdf");
        Assert.Equal(200, answer.Status);
        var bytes = await answer.BodyAsync();
        if (Pictures.Folder is { } folder) await File.WriteAllBytesAsync(Path.Combine(folder, "record.pdf"), bytes);
        using var pdf = PdfDocument.Open(bytes);
        var text = string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
        Assert.All(
            (string[])
            [
                "QRA-101", "Turned both bushings of the left eccentric", "chapter 57-10", "revision C", "attachment bolt, 3/8-24", "run-on",
                "TW-1", "Q-365-624", "left aileron 160 N at 18 °C, with TM-1", "left aileron 20° up, 15° down", "Edda Lindgard", "Jude Arkwell", "4321.5", "Q-M-1126", "mechanic, airframe and powerplant ratings", "15",
            ],
            wanted => Assert.Contains(wanted, text, StringComparison.OrdinalIgnoreCase));
    }
}
