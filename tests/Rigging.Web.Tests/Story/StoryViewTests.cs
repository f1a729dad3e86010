using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Story;
using School = Rigging.Squawks.Tests.School;

namespace Rigging.Web.Tests.Story;

public class StoryViewTests
{
    public static TheoryData<Stage> Stages => [.. Enum.GetValues<Stage>()];

    static readonly Person[] Everybody = [School.Pilot, School.Student, School.Office, School.Mechanic, School.Inspector, School.Certifier];

    static SquawkFile File(Ledger ledger, Person who, Func<Facts, Facts>? change = null) => new(
        ledger, change?.Invoke(School.Facts(who)) ?? School.Facts(who), new(School.Aircraft, "Q-101", "7", "ST-2", 1200),
        new(new Dictionary<PersonId, string> { [School.Mechanic.Id] = "Mira Mechanic" }, new Dictionary<CertificateId, string> { [School.Mechanic.Certificates[0].Id] = "INV-4" }, []),
        new("Invented Flying School", DateTimeZoneProviders.Tzdb["America/Chicago"], "united-states"));

    [Theory, MemberData(nameof(Stages))]
    public void Whoever_looks_at_whatever_stage_is_told_the_whole_ledger_and_what_comes_next(Stage stage)
    {
        foreach (var who in Everybody)
        {
            var view = StoryView.Of(File(School.At(stage), who));

            Assert.Equal(view.File.Ledger.Length, view.Rounds.Sum(round => round.Entries.Count));
            Assert.Equal(stage.IsOpen(), view.Next is not null);
            Assert.All(view.Others, step => Assert.StartsWith("squawks/1/", step.Address, StringComparison.Ordinal));
            Assert.Distinct(view.Others.Select(step => step.Address).Append(view.Next?.Address));
        }
    }

    const string ByAnotherFile = "In litres, people and flats by the airframe file of today, ";

    static bool Priced(Told told) => told.Lines.Any(line => line.Text.StartsWith("It would stay level with ", StringComparison.Ordinal));

    static bool ByAnother(Told told) => told.Lines.Any(line => line.Text.StartsWith(ByAnotherFile, StringComparison.Ordinal));

    /// <summary>Everywhere a tendency is shown its equivalents stand by it, and by which file they were priced where it was another.</summary>
    [Fact]
    public void An_assessed_tendency_is_said_in_litres_people_and_flats_too()
    {
        var assessed = new Assessed("{}", """{"rollTendency":{"mean":-0.8,"low":-1.1,"high":-0.5}}""", "1", "1", School.Airframe.Id, School.Airframe.Version);
        Told Tell(Assessed one) => StoryView.Of(File(School.At(Stage.InChecks).Do(School.Mechanic, one), School.Mechanic)).Rounds[^1].Entries[^1].Told;

        var coins = new Equivalents(new(School.Airframe.Read())).Of(-0.8);

        Assert.StartsWith("It would stay level with ", coins, StringComparison.Ordinal);
        Assert.Equal(coins, Tell(assessed).Lines[1].Text);
        Assert.StartsWith("What the next pilot will feel", Tell(assessed).Lines[2].Text, StringComparison.Ordinal);
        Assert.False(ByAnother(Tell(assessed)));
        var later = Tell(assessed with { AirframeVersion = School.Airframe.Version + 1 });
        Assert.StartsWith(ByAnotherFile, later.Lines[1].Text, StringComparison.Ordinal);
        Assert.Equal(coins, later.Lines[2].Text);
    }

    [Fact]
    public void What_an_agreed_correction_is_expected_to_leave_is_said_in_litres_people_and_flats_too()
    {
        var assessed = new Assessed("{}", """{"rollTendency":{"mean":-0.8,"low":-1.1,"high":-0.5}}""", "1", "1", School.Airframe.Id, School.Airframe.Version);
        Told Tell(Assessed one, double? leaves) => StoryView.Of(File(School.Checked.Do(School.Mechanic, one).Do(School.Mechanic, School.HalfAFlat with { PredictedDegPerS = leaves, PredictedLowDegPerS = leaves - 0.04, PredictedHighDegPerS = leaves + 0.04 }), School.Mechanic)).Rounds[^1].Entries[^1].Told;

        var told = Tell(assessed, -0.1);

        Assert.StartsWith("Expected afterwards: ", told.Lines[^3].Text, StringComparison.Ordinal);
        Assert.Equal(new Equivalents(new(School.Airframe.Read())).Of(-0.1), told.Lines[^2].Text);
        Assert.StartsWith("What the next pilot will feel", told.Lines[^1].Text, StringComparison.Ordinal);
        Assert.True(Priced(told));
        Assert.False(ByAnother(told));
        Assert.False(Priced(Tell(assessed, 0)));
        Assert.False(Priced(Tell(assessed, null)));
        var later = Tell(assessed with { AirframeVersion = School.Airframe.Version + 1 }, -0.1);
        Assert.True(Priced(later) && ByAnother(later));
        var unrecorded = StoryView.Of(File(School.Checked.Do(School.Mechanic, School.HalfAFlat with { PredictedDegPerS = -0.1, PredictedLowDegPerS = -0.2, PredictedHighDegPerS = -0.05 }), School.Mechanic)).Rounds[^1].Entries[^1].Told;
        Assert.True(Priced(unrecorded) && ByAnother(unrecorded));
    }

    /// <summary>A litre counts more where it is slow, so fewer are needed to take the same roll out.</summary>
    [Fact]
    public void At_another_speed_the_coins_are_worth_something_else()
    {
        var airframe = School.Airframe.Read();
        var worth = new Equivalents(new(airframe));

        double Litres(double kt) => double.Parse(System.Text.RegularExpressions.Regex.Match(worth.At(kt).Of(-0.8)!, "[0-9.]+").Value, System.Globalization.CultureInfo.InvariantCulture);

        Assert.Equal(worth.Of(-0.8), worth.At(airframe.Reference.CasKt).Of(-0.8));
        Assert.True(Litres(airframe.Reference.CasKt - 25) < Litres(airframe.Reference.CasKt), $"{Litres(airframe.Reference.CasKt - 25)} against {Litres(airframe.Reference.CasKt)}");
    }

    [Theory, MemberData(nameof(Stages))]
    public void What_is_greyed_out_is_what_the_rules_refuse_in_their_own_words(Stage stage)
    {
        foreach (var who in Everybody)
        {
            var file = File(School.At(stage), who);
            if (StoryView.Of(file).Next is { } next)
                Assert.Equal(file.WhatBlocks(file.Next!.Kind).Select(rule => rule.Sentence), next.Blocked);
        }
    }

    [Fact]
    public void A_pilot_sees_the_call_greyed_out_with_the_reason_and_a_mechanic_may_make_it()
    {
        var pilot = StoryView.Of(File(School.Reported, School.Pilot)).Next!;
        var mechanic = StoryView.Of(File(School.Reported, School.Mechanic)).Next!;

        Assert.Equal("squawks/1/call", pilot.Address);
        Assert.Contains("This is for", Assert.Single(pilot.Blocked), StringComparison.Ordinal);
        Assert.Empty(mechanic.Blocked);
    }

    [Fact]
    public void Another_round_is_told_after_the_first_and_begins_with_why()
    {
        var ledger = School.Flown.Do(School.Mechanic, School.Verdict(VerdictWord.AdjustAgain)).Do(School.Mechanic, new RoundOpened("Half of it is left."));

        var rounds = StoryView.Of(File(ledger, School.Mechanic)).Rounds;

        Assert.Equal([1, 2], rounds.Select(round => round.Number));
        Assert.Equal("verdict: adjust again", rounds[0].Outcome);
        Assert.Equal("Another round opened", Assert.Single(rounds[1].Entries).Told.Title);
    }

    [Fact]
    public void A_corrected_entry_names_the_note_that_corrects_it()
    {
        var ledger = School.Called.Do(School.Pilot, new Noted("It was the right wing.", 1));

        var entries = StoryView.Of(File(ledger, School.Pilot)).Rounds[0].Entries;

        Assert.Equal([3], entries[0].CorrectedBy);
        Assert.Empty(entries[1].CorrectedBy);
        Assert.Equal("Correction of entry 1", entries[2].Told.Title);
    }

    [Fact]
    public void What_was_signed_stands_under_the_name_it_was_signed_with_and_says_the_new_one()
    {
        var file = File(School.Worked, School.Pilot);
        var before = School.Noon + NodaTime.Duration.FromDays(1);
        file = file with { Register = file.Register with { Earlier = [new(School.Mechanic.Id, "Mira Maiden", before)] } };

        var work = StoryView.Of(file).Rounds[0].Entries[^1];

        Assert.Equal("Mira Maiden (now Mira Mechanic)", work.Who);
        Assert.Contains("Mira Maiden, ", work.SignedText, StringComparison.Ordinal);
        Assert.Equal("Mira Mechanic", file.Register.Name(School.Mechanic.Id, before + NodaTime.Duration.FromMilliseconds(1)));
    }

    [Fact]
    public void An_earlier_note_by_a_student_pilot_stands_beside_the_approval_and_heads_nothing()
    {
        var approval = School.Approved.Length;
        var ledger = School.Approved.With(new Entry(approval + 1, School.Noon, School.Student.Id, Authority.Pilot, new Noted("The nut looked old.", approval)));

        var entries = StoryView.Of(File(ledger, School.Pilot)).Rounds[0].Entries;

        Assert.Empty(entries[approval - 1].CorrectedBy);
        Assert.Equal(approval + 1, Assert.Single(entries[approval - 1].Remarks).Sequence);
        Assert.Equal($"Remark on entry {approval}", entries[approval].Told.Title);
    }

    [Fact]
    public void A_late_entry_is_told_with_both_its_times_and_a_signed_paper_with_which_is_the_original()
    {
        var ledger = School.Worked.Do(School.Mechanic, new Noted("Wing support moved.", null, School.Noon - NodaTime.Duration.FromHours(3)))
            .Do(School.Mechanic, School.Checks[0] with { HappenedAt = School.Noon - NodaTime.Duration.FromHours(2) })
            .Do(School.Mechanic, new Photographed(School.PictureHash, PhotoOf.SignedPaper, "The record, in ink.", School.Worked.Length, Original.ThePaper));

        var told = StoryView.Of(File(ledger, School.Pilot)).Rounds[0].Entries;

        Assert.Equal("Late entry", told[^3].Told.Title);
        Assert.Contains(told[^2].Told.Lines, line => line.Text == "It happened 2026-03-02 04:00; it was entered 2026-03-02 06:00.");
        Assert.Contains(told[^3].Told.Lines, line => line.Text == "It happened 2026-03-02 03:00; it was entered 2026-03-02 06:00.");
        Assert.Contains(told[^1].Told.Lines, line => line.Text == $"Entry {School.Worked.Length} was signed on paper: the paper is the original, and this ledger has a copy.");
    }

    [Fact]
    public void Time_that_runs_backwards_is_said_and_the_order_stays()
    {
        var ledger = School.Called.With(new Entry(3, School.Noon - NodaTime.Duration.FromDays(2), School.Pilot.Id, Authority.Pilot, new Noted("Rang.", null)))
            .With(new Entry(4, School.Noon, School.Pilot.Id, Authority.Pilot, new Noted("Rang again.", null)));

        var told = StoryView.Of(File(ledger, School.Pilot)).Rounds[0].Entries;

        Assert.Equal([1, 2, 3, 4], told.Select(entry => entry.Sequence));
        Assert.Equal([3], told.Where(entry => entry.Told.Lines.Any(line => line.Text.Contains("clock went back", StringComparison.Ordinal))).Select(entry => entry.Sequence));
    }

    [Fact]
    public void A_signature_is_told_with_certificate_and_the_text_with_names_in_place()
    {
        var signed = StoryView.Of(File(School.Worked, School.Pilot)).Rounds[0].Entries[^1];

        Assert.Contains("certificate INV-4", signed.Signed, StringComparison.Ordinal);
        Assert.Contains("I did this work as described: Mira Mechanic", signed.SignedText, StringComparison.Ordinal);
        Assert.Equal("Mira Mechanic", signed.Who);
        Assert.Equal("2026-03-02 06:00", signed.When);
    }

    [Fact]
    public void What_is_loose_comes_first_of_all_cautions()
    {
        var ledger = School.InWork.Do(School.Mechanic, new WorkHandedOver("Bolt backed off.", "left rear bolt."));

        var first = Caution.Of(File(ledger, School.Pilot))[0];

        Assert.Equal(RemarkKind.Stop, first.Kind);
        Assert.Contains("left rear bolt", first.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_squawk_that_bars_the_aircraft_is_named()
    {
        var cautions = Caution.Of(File(School.Called, School.Pilot, facts => facts with { OtherSquawks = [new(School.Other, 7, FlightStatus.Grounded)] }));

        Assert.Contains(cautions, caution => caution.Text.Contains("S-7", StringComparison.Ordinal) && caution.Text.Contains("grounded", StringComparison.Ordinal));
    }

    [Fact]
    public void A_newer_entry_is_shown_as_such_and_said_at_the_top()
    {
        var ledger = School.Called.With(new Entry(3, School.Noon, School.Pilot.Id, Authority.Pilot, new NewerEntry("wing-walk", 2, "{}")));

        var view = StoryView.Of(File(ledger, School.Pilot));

        Assert.Contains(view.Cautions, caution => caution.Text.Contains("newer version", StringComparison.Ordinal));
        Assert.Equal("An entry this program cannot read", view.Rounds[0].Entries[2].Told.Title);
    }
}
