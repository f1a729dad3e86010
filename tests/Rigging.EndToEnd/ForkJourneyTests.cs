namespace Rigging.EndToEnd;

/// <summary>A cure that is not an eccentric: the invented school's eighth squawk, from its proposal on a strut fork to a closed complaint.</summary>
public class ForkJourneyTests(RunningSite site)
{
    [Fact]
    public async Task A_proposed_turn_of_a_strut_fork_is_agreed_done_inspected_flown_and_closed()
    {
        var n = site.Numbers["QVA-301"];
        await using var mechanic = await Visitor.Known(site, "jude", 820, 1180);
        await using var inspector = await Visitor.Known(site, "edda", 1280, 900);
        await using var pilot = await Visitor.Known(site, "ilse", 390, 844);

        await mechanic.Goes($"/squawks/{n}/assessment");
        await mechanic.Sees("Right rear strut fork, 1.5 turns in");
        await mechanic.Keeps("fork-assessment");
        await mechanic.Sets(("plan", "proposed"), ("confirmed", "true"), ("reason", "Survey, counted threads and flight agree; the fork went back two turns too long."));
        await mechanic.Presses("Agree this correction");
        await mechanic.IsAt($"/squawks/{n}");

        await Works(mechanic, n);

        await AfterWork.Inspects(inspector, n, "10 turns out from fully in", "fork-inspection", "Fork, bolt, lock wire, thread in the witness hole, travel looked at.");
        await AfterWork.Approves(inspector, n);
        await AfterWork.Flies(pilot, n, "right rear lift strut fork", "fork-check-flight", ("durationH", "0.6"), ("fuel-left", "20"), ("fuel-right", "20"), ("seat-left", "77"), ("seat-right", "77"), ("pressureAltitudeFt", "2500"),
            ("release1.casKt", "60"), ("release1.seconds", "10"), ("release1.side", "left"), ("release1.bankDeg", "1"),
            ("release2.casKt", "78"), ("release2.seconds", "10"), ("release2.side", "left"), ("release2.bankDeg", "1"), ("remarks", "Stays where it is put."));
        await AfterWork.Accepts(mechanic, n, "fork-verdict");
        await AfterWork.Closes(inspector, n, "Flies straight two up.");
        await inspector.Keeps("fork-story");
        Assert.Empty((string[])[.. mechanic.Amiss, .. inspector.Amiss, .. pilot.Amiss]);
    }

    static async Task Works(Visitor mechanic, int n)
    {
        await mechanic.Goes($"/squawks/{n}/work");
        await mechanic.Sets(("start.wingSupport", "Padded stand under the right strut fitting, 57-40."));
        await mechanic.Presses("Start the work");
        await mechanic.Sees("The work is started.");
        await mechanic.Keeps("fork-work");
        await mechanic.Sets(("move.held", "true"), ("move.loosened", "true"), ("move.free", "true"), ("move.zeroed", "true"));
        await JourneyTests.Proves(mechanic, "RightStrutFork", "INC-1", opposite: "Up", way: "Down", half: "0.1", whole: "0.25");
        // Pressed and not waited for: with this tick the step is over, and its box goes.
        await mechanic.Page.Locator("[name='move.done']").ClickAsync();
        await mechanic.Sets(("torque.fastener", "Right rear strut fork bolt, 1/4-28"), ("torque.source", "manual"));
        await mechanic.Sets(("torque.citation", "VS-2 Maintenance Manual, 57-40, revision B"), ("torque.min", "60"), ("torque.max", "80"), ("torque.includes", "yes"), ("torque.for", "dry"), ("torque.by", "nut"), ("torque.threads", "dry"), ("torque.turned", "nut"), ("torque.nut", "castle"));
        await mechanic.Sets(("torque.wrench", await mechanic.ChoiceOf("torque.wrench", "TW-1")), ("torque.settingInLb", "70"), ("torque.torqueStripe", "true"));
        await mechanic.Presses("Record this torque application");
        await mechanic.Sees("70 in·lb");
        await AfterWork.MeasuresAgain(mechanic, n, 110);
        await mechanic.Goes($"/squawks/{n}/work");
        await mechanic.Sets(("done.description", "Right rear strut fork turned in a turn and a half; bolt, nut and lock wire renewed."), ("done.adjusterRightStrutFork", "8.5"),
            ("done.disturbed", "right rear lift strut fork\nright aileron cables"), ("done.surfaceAilerons", "yes"), ("done.surfaceFlaps", "no"), ("done.surfaceRudder", "no"), ("done.surfaceElevator", "no"),

            ("done.toolsOut", "7"), ("done.toolsBack", "7"), ("done.everythingRefitted", "true"), ("done.noTemporaryHardware", "true"), ("done.nothingLoose", "true"), ("done.manHours", "2"), ("done.totalTimeH", "7421.5"), ("done.completedOn", await mechanic.Today()));
        await mechanic.Keeps("fork-work-done");
        await mechanic.Presses("Go on to sign");
        await mechanic.Signs(n, "work-done");
    }
}
