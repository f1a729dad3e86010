using System.Net;
using AngleSharp.Html.Dom;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.SideSteps;

/// <summary>Notes, remarks and corrections as the page offers them.</summary>
[Collection(InTheHangar.Name)]
public sealed class NotePageTests(Hangar hangar)
{
    static readonly int Approval = School.Approved.Length;

    static string[] Offered(Page page, string name) =>
        [.. ((IHtmlSelectElement)page.Document.QuerySelector($"select[name={name}]")!).Options.Select(option => option.Value).Where(value => value != "")];

    [Fact]
    public async Task A_student_pilot_is_offered_no_signed_act_to_correct_and_every_entry_to_remark_on()
    {
        var squawk = await hangar.Squawk(School.Approved);
        using var student = await hangar.As(School.Student);

        var page = await student.Open($"/squawks/{squawk}/other/note");

        Assert.Empty(Offered(page, "corrects"));
        Assert.Equal(Approval, Offered(page, "remarkOn").Length);
    }

    [Fact]
    public async Task A_correction_forced_past_the_page_is_refused_and_what_was_typed_stays()
    {
        var squawk = await hangar.Squawk(School.Approved);
        using var student = await hangar.As(School.Student);

        var answer = await student.Submit(await student.Open($"/squawks/{squawk}/other/note"), new() { ["corrects"] = $"{Approval}", ["text"] = "The nut looked old." });

        Assert.Contains($"Entry {Approval} is not yours to correct.", answer.Document.QuerySelector("#corrects-error")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("The nut looked old.", answer.Document.QuerySelector("textarea[name=text]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(Approval, (await hangar.Ledger(squawk)).Length);
    }

    [Fact]
    public async Task A_remark_is_recorded_beside_the_approval()
    {
        var squawk = await hangar.Squawk(School.Approved);
        using var student = await hangar.As(School.Student);

        var answer = await student.Submit(await student.Open($"/squawks/{squawk}/other/note"), new() { ["remarkOn"] = $"{Approval}", ["text"] = "The nut looked old." });

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        Assert.Equal(new Noted("The nut looked old.", null, RemarkOn: Approval), (await hangar.Ledger(squawk)).Entries[^1].Fact);
    }

    [Fact]
    public async Task A_certifier_corrects_an_approval_only_under_a_signature()
    {
        var squawk = await hangar.Squawk(School.Approved);
        using var certifier = await hangar.As(School.Certifier);

        var leads = await certifier.Submit(await certifier.Open($"/squawks/{squawk}/other/note"), new() { ["corrects"] = $"{Approval}", ["text"] = "The revision is D." });
        Assert.EndsWith($"/squawks/{squawk}/sign/note", leads.Location, StringComparison.Ordinal);
        Assert.Equal(Approval, (await hangar.Ledger(squawk)).Length);

        var page = await certifier.Open($"/squawks/{squawk}/sign/note");
        Assert.Contains($"Correction of entry {Approval}, approval, signed by Conrad Certifier", page.Text, StringComparison.Ordinal);
        var signed = await certifier.Submit(page, new() { ["Form.Password"] = TestSite.Password });
        Assert.Equal(HttpStatusCode.Redirect, signed.Status);
        var ledger = await hangar.Ledger(squawk);
        Assert.NotNull(ledger.Entries[^1].Signature);
        Assert.Equal([ledger.Length], Correcting.CorrectionsOf(ledger.Entries[Approval - 1], ledger).Select(note => note.Sequence));
    }
}
