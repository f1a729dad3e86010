using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>Inspection, approval and signatures.</summary>
public partial class ForbiddenStories
{
    [Fact]
    public void A_mechanic_inspects_own_work() => Refused("inspector-did-the-work", Worked, Mechanic, Inspection);

    [Fact]
    public void An_inspector_who_only_held_the_wrench_inspects()
    {
        var second = Someone(8, [Authority.Mechanic, Authority.Inspector], "mechanic-airframe");
        Refused("inspector-did-the-work", InWork.Do(Mechanic, Found).Do(second, Torque).MeasuredAgain().Do(Mechanic, Done), second, Inspection);
    }

    [Fact]
    public void An_inspector_who_saw_the_wrong_way_passes_it() => Refused("mismatch-cannot-pass", Worked, Inspector, Inspection with { Observations = [.. Saw(Seen.Down)] });

    [Fact]
    public void An_inspector_who_saw_nothing_move_passes_it() => Refused("mismatch-cannot-pass", Worked, Inspector, Inspection with { Observations = [.. Saw(Seen.Still)] });

    [Fact]
    public void Nothing_seen_is_recorded() => Refused("seen-missing", Worked, Inspector, Inspection with { Observations = [] });

    [Fact]
    public void One_observation_is_left_out() => Refused("seen-missing", Worked, Inspector, Inspection with { Observations = [.. Inspection.Observations.Skip(1)] });

    [Fact]
    public void The_page_says_itself_what_right_looks_like() => Refused("mismatch-cannot-pass", Worked, Inspector,
        Inspection with { Observations = [.. Inspection.Observations.Select(o => o with { Expected = Seen.Left, Seen = Seen.Left })] });

    [Fact]
    public void The_rudder_tab_was_moved_and_nobody_looked_at_the_rudder()
    {
        var tab = HalfAFlat with { Moves = [new(Control.RudderTab, null, null, "Rudder tab: 3 mm left.")] };
        var ledger = Checked.Do(Mechanic, tab).Do(Mechanic, new WorkStarted("Not needed.", null))
            .Do(Mechanic, new AsFound(new(null, null, null, null), "Tab straight."))
            .Do(Mechanic, Done with { AsLeft = new(null, null, null, null), OtherAsLeft = "Tab 3 mm left.", Disturbed = ["the little tab at the back"], Surfaces = [ControlSurface.Rudder], Resets = [] });

        Refused("seen-missing", ledger, Inspector, Inspection);
    }

    [Fact]
    public void The_stabilator_was_disturbed_and_nobody_looked_at_it() =>
        Refused("seen-missing", Torqued.Do(Mechanic, Done with { Disturbed = ["stabilator stop"], Surfaces = [ControlSurface.Elevator] }), Inspector, Inspection);

    /// <summary>Work that was signed before anybody was asked by name: words prove nothing left alone, so every surface is looked at.</summary>
    [Fact]
    public void Old_work_says_in_words_alone_what_it_disturbed()
    {
        var signed = Worked;
        var old = new Ledger(signed.Id, signed.Entries.Select(entry => entry.Fact is WorkDone done ? entry with { Fact = done with { Surfaces = null } } : entry));

        Refused("seen-missing", old, Inspector, Inspection);
        Assert.Equal(["left aileron", "right aileron", "left flap", "right flap", "rudder", "elevator"], old.State.ControlsToSee.Select(asked => asked.Surface).Distinct());
    }

    [Fact]
    public void Full_travel_was_not_seen() => Refused("travel-not-checked", Worked, Inspector, Inspection with { FullTravelAtEveryFlapSetting = false });

    [Fact]
    public void Locking_was_not_seen() => Refused("security-not-checked", Worked, Inspector, Inspection with { SecuredAndLocked = false });

    [Fact]
    public void Tools_were_not_counted() => Refused("not-refitted", Worked, Inspector, Inspection with { NothingLeftBehind = false });

    [Fact]
    public void A_difference_from_the_plan_is_passed_over() =>
        Refused("difference-not-accepted", Torqued.Do(Mechanic, Done with { AsLeft = new(45, 45, 0, 0), DiffersBecause = "The hole only took 45°." }), Inspector, Inspection);

    [Fact]
    public void Approval_before_inspection() => Refused("wrong-stage", Worked, Certifier, Approval);

    [Fact]
    public void Approval_after_an_inspection_that_failed() => Refused("wrong-stage", Worked.Do(Inspector, Inspection with { Passed = false }), Certifier, Approval);

    [Fact]
    public void Approval_while_damage_is_on_record() => Refused("aircraft-grounded", School.Inspected.Do(Mechanic, DamageFound), Certifier, Approval);

    [Fact]
    public void Approval_over_a_grounding_made_during_the_work() => Refused("aircraft-grounded", School.Worked.Do(Office, Grounded).Do(Inspector, Inspection), Certifier, Approval);

    [Fact]
    public void A_powerplant_only_mechanic_approves() =>
        Refused("certificate-does-not-cover-the-work", School.Inspected, Someone(7, [Authority.Certifier], "mechanic-powerplant"), Approval);

    [Fact]
    public void An_expired_certificate_approves() =>
        Refused("certificate-expired", School.Inspected, Certifier with { Certificates = [Certifier.Certificates[0] with { ValidUntil = Today.PlusDays(-1) }] }, Approval);

    [Fact]
    public void A_certifier_without_any_certificate_approves() => Refused("certificate-missing", School.Inspected, Certifier with { Certificates = [] }, Approval);

    [Fact]
    public void An_inspector_who_is_no_certifier_approves() => Refused("no-authority", School.Inspected, Inspector, Approval);

    [Fact]
    public void Where_the_rule_set_forbids_it_the_mechanic_approves_own_work() =>
        Refused("certifier-did-the-work", School.Inspected, Mechanic, Approval, facts => facts with { RuleSet = facts.RuleSet with { WorkerMayCertify = false } });

    [Fact]
    public void The_check_flight_is_waved_through_after_incidence_work() =>
        Refused("check-flight-needed", School.Inspected, Certifier, Approval with { MayHaveChangedHandling = false, ConclusiveBecause = "Measured on the ground." });

    public static TheoryData<Stage> SignedSteps => [Stage.InWork, Stage.AwaitingInspection, Stage.AwaitingApproval, Stage.ApprovedPassengersBarred, Stage.CheckFlightLogged];

    static (Ledger Ledger, Person Who, Fact Fact) Signing(Stage stage) => stage switch
    {
        Stage.InWork => (Torqued, Mechanic, Done),
        Stage.AwaitingInspection => (Worked, Inspector, Inspection),
        Stage.AwaitingApproval => (School.Inspected, Certifier, Approval),
        Stage.ApprovedPassengersBarred => (School.Approved, Pilot, Flight),
        _ => (Judged, Inspector, new Closed("Explained.")),
    };

    [Theory, MemberData(nameof(SignedSteps))]
    public void Signed_without_a_password(Stage stage)
    {
        var (ledger, who, fact) = Signing(stage);
        Assert.Equal(["not-reauthenticated"], Codes(Squawk.Decide(ledger, fact, Facts(who))));
    }

    [Theory, MemberData(nameof(SignedSteps))]
    public void Signed_under_a_stale_text(Stage stage)
    {
        var (ledger, who, fact) = Signing(stage);
        var stale = SignedText.Sha256(Squawk.TextToSign(ledger, fact, Facts(who)) + " ");
        Refused("text-changed", ledger, who, fact, facts => facts with { Affirmation = new("password", Noon, stale, stale) });
    }

    [Theory, MemberData(nameof(SignedSteps))]
    public void Signed_with_a_password_typed_long_ago_or_not_yet(Stage stage)
    {
        var (ledger, who, fact) = Signing(stage);
        var hash = SignedText.Sha256(Squawk.TextToSign(ledger, fact, Facts(who)));
        foreach (var seconds in (int[])[-121, 1])
            Refused("not-reauthenticated", ledger, who, fact, facts => facts with { Affirmation = new("password", Noon.Plus(NodaTime.Duration.FromSeconds(seconds)), hash, hash) });
    }

    [Theory, MemberData(nameof(SignedSteps))]
    public void Signed_over_an_entry_of_a_newer_version(Stage stage)
    {
        var (ledger, who, fact) = Signing(stage);
        Refused("newer-entries", Newer(ledger), who, fact);
    }

    static IEnumerable<string> Codes(Decision decision) => Assert.IsType<Decision.Refused>(decision).Broken.Select(b => b.Code);

    static IEnumerable<Observation> Saw(Seen first) => Inspection.Observations.Select((o, i) => i == 0 ? o with { Seen = first } : o);
}
