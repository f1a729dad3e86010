using CsCheck;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>Who may correct whose entry, and what a note without that authority is.</summary>
public class CorrectingTests
{
    static int Of<T>(Ledger ledger) where T : Fact => ledger.Entries.Last(entry => entry.Fact is T).Sequence;

    static string[] Codes(Decision decision) => decision is Decision.Refused refused ? [.. refused.Broken.Select(rule => rule.Code).Distinct()] : [];

    static Noted Correction(int entry) => new("The nut was invented-2.", entry);

    [Fact]
    public void A_student_pilot_does_not_correct_a_signed_approval_but_may_remark_on_it()
    {
        var approval = Of<Approved>(Flown);

        var refused = Assert.IsType<Decision.Refused>(Try(Flown, Student, Correction(approval)));
        Assert.Equal([("not-yours-to-correct", "corrects")], refused.Broken.Select(rule => (rule.Code, rule.Field)).Distinct());

        var remarked = Flown.Do(Student, new Noted("The nut looked new.", null, RemarkOn: approval));
        Assert.Empty(Correcting.CorrectionsOf(remarked.Entries[approval - 1], remarked));
        Assert.Equal([remarked.Length], Correcting.RemarksOn(remarked.Entries[approval - 1], remarked).Select(note => note.Sequence));
    }

    [Fact]
    public void A_certifier_corrects_the_approval_of_another_under_a_signature_and_a_certificate_of_their_own()
    {
        var approval = Of<Approved>(Flown);
        var corrected = Flown.Do(Mechanic, Correction(approval));

        var note = corrected.Entries[^1];
        Assert.Equal((Authority.Certifier, Mechanic.Certificates[0].Id), (note.As, note.Signature!.Certificate));
        Assert.Contains($"Correction of entry {approval}, approval", note.Signature.Text, StringComparison.Ordinal);
        Assert.Equal([note], Correcting.CorrectionsOf(corrected.Entries[approval - 1], corrected));
    }

    [Fact]
    public void Without_a_fresh_signature_nobody_corrects_what_was_signed() =>
        Assert.Equal(["not-reauthenticated"], Codes(Squawk.Decide(Flown, Correction(Of<Approved>(Flown)), Facts(Certifier))));

    [Fact]
    public void An_approval_is_not_corrected_without_the_certificate_it_needs() =>
        Assert.Equal(["not-yours-to-correct"], Codes(Try(Flown, Someone(80, [Authority.Certifier], "private-pilot"), Correction(Of<Approved>(Flown)))));

    [Fact]
    public void A_check_flight_is_not_corrected_by_a_pilot_who_might_not_fly_it()
    {
        Assert.Equal(["not-yours-to-correct"], Codes(Try(Flown, Student, Correction(Of<CheckFlown>(Flown)))));
        Assert.Empty(Codes(Try(Flown, Pilot, Correction(Of<CheckFlown>(Flown)))));
    }

    [Fact]
    public void An_independent_inspection_is_not_corrected_by_whoever_did_the_work()
    {
        var inspection = Of<Inspected>(Flown);
        Assert.Equal(["not-yours-to-correct"], Codes(Try(Flown, Mechanic, Correction(inspection))));
        Assert.Empty(Codes(Try(Flown, Inspector, Correction(inspection))));
    }

    [Fact]
    public void A_correction_of_a_signed_act_is_itself_corrected_only_under_the_authority_of_that_act()
    {
        var corrected = Flown.Do(Certifier, Correction(Of<Approved>(Flown)));
        Assert.Equal(["not-yours-to-correct"], Codes(Try(corrected, Inspector, Correction(corrected.Length))));
        Assert.Empty(Codes(Try(corrected, Mechanic, Correction(corrected.Length))));
    }

    [Fact]
    public void What_was_not_signed_is_corrected_by_its_author_or_by_those_who_answer_for_it()
    {
        var call = Of<Called>(School.Called);
        Assert.Empty(Codes(Try(School.Called, Pilot, Correction(1))));
        Assert.Empty(Codes(Try(School.Called, Mechanic, Correction(1))));
        Assert.Equal(["not-yours-to-correct"], Codes(Try(School.Called, Student, Correction(1))));
        Assert.Equal(["not-yours-to-correct"], Codes(Try(School.Called, Student, Correction(call))));
        Assert.Equal(["not-yours-to-correct"], Codes(Try(School.Called, Office, Correction(call))));
    }

    [Fact]
    public void An_earlier_note_without_that_authority_folds_and_counts_as_a_remark()
    {
        var approval = Of<Approved>(Flown);
        var old = Flown.With(new Entry(Flown.Length + 1, Noon, Student.Id, Authority.Pilot, Correction(approval)));

        Assert.Equal(new Noted("The nut was invented-2.", null, RemarkOn: approval), Correcting.AsItCounts(old.Entries[^1], old));
        Assert.Empty(Correcting.CorrectionsOf(old.Entries[approval - 1], old));
    }

    [Fact]
    public void An_earlier_unsigned_note_by_the_signer_counts_as_the_correction_it_was()
    {
        var approval = Of<Approved>(Flown);
        var old = Flown.With(new Entry(Flown.Length + 1, Noon, Certifier.Id, Authority.Certifier, Correction(approval)));

        Assert.Equal([old.Length], Correcting.CorrectionsOf(old.Entries[approval - 1], old).Select(note => note.Sequence));
    }

    [Fact]
    public void A_note_corrects_or_remarks_and_not_both()
    {
        Assert.Equal(["correction-or-remark"], Codes(Try(School.Called, Mechanic, new Noted("Meant 95 kt.", 1, RemarkOn: 1))));
        Assert.Equal(["no-such-entry"], Codes(Try(School.Called, Mechanic, new Noted("Meant 95 kt.", null, RemarkOn: 40))));
    }

    [Fact]
    public void Whatever_the_rules_let_in_counts_as_they_let_it_in_and_the_page_is_told_the_same() => Walks.All.Sample(steps =>
    {
        foreach (var moment in Walks.Walk(steps))
        {
            if (moment.Decision is not Decision.Accepted { Entry: { Fact: Noted { Corrects: { } corrected } note } entry }) continue;
            Assert.Equal(note, Correcting.AsItCounts(entry, moment.After));
            Assert.Equal(moment.Before.Entries[corrected - 1].Signature is not null, entry.Signature is not null);
        }
    }, iter: 150);
}
