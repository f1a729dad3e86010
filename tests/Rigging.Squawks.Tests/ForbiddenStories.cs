using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>
/// What must never be written into a squawk, one sentence each, told from the trade's side. Every story starts from a step that would have been
/// accepted and changes one thing. It must be refused for that one thing, and the ledger must be as it was.
/// </summary>
public partial class ForbiddenStories
{
    static void Refused(string code, Ledger ledger, Person who, Fact fact, Func<Facts, Facts>? change = null)
    {
        if (fact is WorkDone done) fact = done.Proved(ledger);
        Entry[] before = [.. ledger.Entries];
        string[] bytes = [.. Bytes(ledger)];
        var state = ledger.State;

        var refused = Assert.IsType<Decision.Refused>(Try(ledger, who, fact, change));

        Assert.Equal([code], refused.Broken.Select(b => b.Code).Distinct());
        Assert.All(refused.Broken, b => Assert.True(b.Sentence.Length > 15 && b.Sentence.EndsWith('.'), b.Sentence));
        Assert.Equal(before, ledger.Entries);
        Assert.Equal(bytes, Bytes(ledger));
        Assert.Same(state, ledger.State);
    }

    static IEnumerable<string> Bytes(Ledger ledger) => ledger.Entries.Where(entry => entry.Fact is not NewerEntry).Select(EntryCodec.Write);

    static Ledger Newer(Ledger ledger) =>
        ledger.With(new Entry(ledger.Length + 1, Noon, Office.Id, Authority.Office, new NewerEntry("paint-survey", 1, "{}")));

    static readonly Called NoHold = new(Call.NoRiggingHold, "Looked at it.", null);
    static readonly Called Grounded = new(Call.Grounded, "Nobody flies it.", null);

    // Who may

    [Fact]
    public void An_office_clerk_un_grounds() => Refused("office-may-only-ground", School.Called.Do(Office, Grounded), Office, NoHold);

    [Fact]
    public void An_office_clerk_releases_an_aircraft_held_for_a_call() => Refused("office-may-only-ground", School.Reported, Office, NoHold);

    [Fact]
    public void An_office_clerk_lets_it_fly_with_limits() =>
        Refused("office-may-only-ground", School.Reported, Office, new Called(Call.MayFlyWithLimits, "Short of aircraft.", "Day VFR, two up."));

    [Fact]
    public void An_office_clerk_lifts_the_hold_by_joining_it_to_another_squawk() =>
        Refused("no-authority", School.Reported, Office, Join, facts => facts with { OtherSquawks = [new(Other, 7, FlightStatus.MayFly)] });

    [Fact]
    public void An_office_clerk_lifts_the_hold_by_handing_it_over() => Refused("no-authority", School.Reported, Office, new HandedOver("avionics shop", "Not rigging."));

    [Fact]
    public void A_pilot_makes_the_airworthiness_call() => Refused("no-authority", School.Reported, Pilot, NoHold);

    [Fact]
    public void A_red_flagged_aircraft_is_released_by_a_call() => Refused("red-flags-not-cleared", RedFlagged, Mechanic, NoHold);

    [Fact]
    public void An_aircraft_with_damage_found_is_released_by_a_call() =>
        Refused("damage-found", School.Called.Do(Mechanic, DamageFound), Mechanic, NoHold);

    [Fact]
    public void May_fly_with_limits_but_no_limits_named() => Refused("limits-missing", School.Reported, Mechanic, new Called(Call.MayFlyWithLimits, "Mild.", " "));

    [Fact]
    public void A_call_without_a_reason() => Refused("text-missing", School.Reported, Mechanic, NoHold with { Reason = "" });

    // Leaving by a side door

    [Fact]
    public void No_fault_found_while_grounded() => Refused("aircraft-grounded", School.Called.Do(Office, Grounded), Inspector, new NoFaultFound("Flew straight for me.", true));

    [Fact]
    public void No_fault_found_with_panels_still_open() => Refused("not-refitted", School.Called, Inspector, new NoFaultFound("Flew straight for me.", false));

    [Fact]
    public void Within_limits_without_saying_which_limit() => Refused("limit-source-missing", School.Called, Inspector, new WithinLimits("0.3 °/s at 95 kt.", "", true));

    [Fact]
    public void A_red_flagged_aircraft_is_handed_over_and_so_released() => Refused("aircraft-grounded", RedFlagged.Do(Office, Grounded), Mechanic, new HandedOver("avionics shop", "Not rigging."));

    [Fact]
    public void Joined_to_a_squawk_of_another_aircraft() =>
        Refused("join-target-missing", School.Called, Mechanic, Join, facts => facts with { OtherSquawks = [new(new(Guid.NewGuid()), 9, FlightStatus.MayFly)] });

    [Fact]
    public void Limits_are_lifted_by_joining_a_squawk_that_has_none() =>
        Refused("join-would-lift", School.Reported.Do(Mechanic, new Called(Call.MayFlyWithLimits, "Mild.", "Day VFR.")), Mechanic, Join,
            facts => facts with { OtherSquawks = [new(Other, 7, FlightStatus.MayFly)] });

    [Fact]
    public void A_hold_is_lifted_by_joining_before_anybody_has_made_a_call() =>
        Refused("join-would-lift", School.Reported, Mechanic, Join, facts => facts with { OtherSquawks = [new(Other, 7, FlightStatus.MayFly)] });

    [Fact]
    public void Joined_to_itself() => Refused("join-target-missing", School.Called, Mechanic, Join with { Other = School.Called.Id });

    [Theory, InlineData(Stage.InWork), InlineData(Stage.AwaitingInspection), InlineData(Stage.AwaitingApproval), InlineData(Stage.ApprovedPassengersBarred)]
    public void A_disturbed_aircraft_leaves_without_inspection_approval_and_flight(Stage stage)
    {
        foreach (var way in (Fact[])[new NoFaultFound("Fine.", true), new WithinLimits("Fine.", "School limit.", true), new HandedOver("shop", "Not rigging.")])
            Refused("wrong-stage", At(stage), Mechanic, way);
    }

    [Fact]
    public void Work_goes_on_while_the_squawk_waits_for_data() =>
        Refused("waiting", Checked.Do(Mechanic, new Waiting(WaitingFor.Data, "Manual revision D is on order.")), Mechanic, HalfAFlat);

    [Fact]
    public void A_note_corrects_an_entry_that_does_not_exist() => Refused("no-such-entry", School.Called, Mechanic, new Noted("Meant 95 kt.", 40));

    static readonly Person MechanicOnly = Someone(71, [Authority.Mechanic], "mechanic-airframe");

    static readonly GroundChecked FoundClear = Checks.Single(check => check.Check == Check.DamageInspection);

    [Fact]
    public void A_mechanic_lifts_a_grounding_by_finding_no_damage() => Refused("clearing-needs-an-inspector", RedFlagged, MechanicOnly, FoundClear);

    [Fact]
    public void A_mechanic_takes_back_the_damage_somebody_found() => Refused("clearing-needs-an-inspector", Checked.Do(Mechanic, DamageFound), MechanicOnly, FoundClear);

    [Fact]
    public void An_inspector_lifts_a_grounding_without_a_signature() =>
        Refused("not-reauthenticated", RedFlagged, Inspector, FoundClear, facts => facts with { Affirmation = new("password", Noon - NodaTime.Duration.FromHours(1), "", "") });

    [Fact]
    public void A_grounding_is_lifted_over_entries_that_cannot_be_read() => Refused("newer-entries", Newer(RedFlagged), Inspector, FoundClear);

    [Fact]
    public void A_late_entry_of_something_that_has_not_happened_yet() =>
        Refused("date-in-future", School.Called, Mechanic, new Noted("Torqued it.", null, Noon + NodaTime.Duration.FromMinutes(1)));

    [Fact]
    public void A_grounding_is_lifted_by_a_look_before_it() =>
        Refused("inspected-before-suspected", RedFlagged, Inspector, FoundClear with { HappenedAt = Noon - NodaTime.Duration.FromMinutes(1) });

    [Fact]
    public void A_check_entered_late_was_measured_when_the_tool_was_out_already() => Refused("tool-out-of-calibration", School.Called, Mechanic,
        Measured(Check.FlapDifference, 0.1) with { Tool = ProtractorADayOut.Id, HappenedAt = Noon - NodaTime.Duration.FromHours(1) });

    static readonly Photographed Paper = new(new string('a', 64), PhotoOf.SignedPaper, "The record, signed.", School.Worked.Length, Original.ThePaper);

    [Fact]
    public void A_signed_paper_of_an_entry_that_nobody_signed() => Refused("no-such-signature", School.Worked, Mechanic, Paper with { PaperOf = 1 });

    [Fact]
    public void A_signed_paper_of_which_nobody_says_whether_it_is_the_original() => Refused("original-not-said", School.Worked, Mechanic, Paper with { Original = null });

    static readonly GroundChecked DamageFound = Measured(Check.DamageInspection, null) with { Clear = false, Finding = "Wrinkled skin at the left rear fitting." };

    static Ledger RedFlagged => School.Empty.Do(Pilot, Report with { RedFlags = [RedFlag.Bang] });
}
