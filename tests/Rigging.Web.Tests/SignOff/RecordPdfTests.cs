using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;
using Rigging.Storage.School;
using UglyToad.PdfPig;

namespace Rigging.Web.Tests.SignOff;

[Collection(InTheHangar.Name)]
public sealed class RecordPdfTests(Hangar hangar)
{
    async Task<(byte[] File, IReadOnlyList<string> Pages)> Print(int number, string query = "")
    {
        using var browser = await hangar.As(School.Office);
        using var answer = await browser.Http.GetAsync(new Uri($"/squawks/{number}/record.pdf{query}", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
        var file = await answer.Content.ReadAsByteArrayAsync();
        using var document = PdfDocument.Open(file);
        return (file, [.. document.GetPages().Select(page => OneLine(string.Join(' ', page.GetWords().Select(word => word.Text))))]);
    }

    static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    static void Holds(string paper, params string[] wanted) => Assert.All(wanted, text => Assert.Contains(OneLine(text), paper, StringComparison.Ordinal));

    /// <summary>Set PRINT_TO to a folder to look at the paper.</summary>
    static void Keep(string name, byte[] file)
    {
        if (Environment.GetEnvironmentVariable("PRINT_TO") is { Length: > 0 } folder) File.WriteAllBytes(Path.Combine(folder, name), file);
    }

    [Fact]
    public async Task Everything_a_reader_of_the_aircrafts_records_needs_is_on_it()
    {
        var number = await hangar.Squawk(School.Closed);

        var (file, pages) = await Print(number);
        Keep("closed.pdf", file);
        var paper = string.Join(' ', pages);

        Holds(paper,
            "Maintenance record entry", $"Squawk S-{number}", "serial invented-7", "Rolls left by itself.",
            "Maintenance Manual (invented), section 57-10, revision C", "Left eccentric turned half a flat, trailing edge down.", "Padded stand under the strut fitting");
        Holds(paper, "left wing, front 15° trailing edge up 15° trailing edge down", "left wing, rear 15° trailing edge up 15° trailing edge down", "right wing, rear neutral neutral", "½ flat");
        Holds(paper, "left rear spar attach bolt 3/8-24", "15 in·lb measured, added", "175 to 205 in·lb", "TW-3, calibration due 2026-04-01", "190 in·lb at the fastener", "torque stripe applied");
        Holds(paper, "1 self-locking nut 3/8-24 invented-1", "left aileron cable tension 36 lb at 18 °C", "left rear spar attachment; left aileron cables", "0.9 mm down");
        Holds(paper, "Mira Mechanic", "Ines Inspector", "wheel left left aileron up up", "Fitting, stripe, cables, travel seen.");
        Holds(paper, "2026-03-02", "1234.5 h", "approved for return to service", "Conrad Certifier", Hangar.NumberOf(School.Certifier.Certificates[0]), "airframe rating", "SHA-256 of the text as shown:");
        Holds(paper, "Very slightly right.", "Paula Pilot", "accepted. The fuller right tank explains it.", "The fuller right tank explains what is left.");
        Assert.DoesNotContain("[U+", paper, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_corrected_total_time_counts_and_is_said_and_the_signed_text_keeps_the_old_one()
    {
        var number = await hangar.Squawk(School.Worked);
        using (var office = await hangar.As(School.Office))
        {
            var page = await office.Open($"/squawks/{number}/other/total-time");
            Assert.Contains("1234.5 h of", page.Text, StringComparison.Ordinal);
            var answer = await office.Submit(page, new() { ["totalTimeH"] = "1215.4", ["reason"] = "" });
            Assert.Contains("what was wrong", answer.Document.QuerySelector("#reason-error")!.TextContent, StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.Redirect, (await office.Submit(page, new() { ["totalTimeH"] = "1215.4", ["reason"] = "The log says 1215.4." })).Status);

            var ledger = await hangar.Ledger(number);
            Assert.Equal("Total time corrected to 1215.4\u202Fh", Rigging.Web.Story.EntryStory.Of(ledger.Entries[^1].Fact).Title);
            await using var db = hangar.Site.OpenDatabase();
            Assert.Equal(12154, (await db.Aircraft.FindAsync(ledger.State.Report!.Aircraft))!.TotalTimeTenths);
        }

        var paper = string.Join(' ', (await Print(number)).Pages);

        Holds(paper, "1215.4 h. Signed with 1234.5 h; corrected by entry", "The log says 1215.4.", "Total time 1234.5 h. Completed 2026-03-02.");
    }

    [Fact]
    public async Task How_the_trims_stood_on_the_check_flight_is_on_it_and_over_the_pilots_signature()
    {
        var number = await hangar.Squawk(School.Approved.Do(School.Pilot, School.Flight with { Trims = new(RollTrim.Neutral, YawTrim.NotFitted, FlownAutopilot.Disconnected) }));

        var paper = string.Join(' ', (await Print(number)).Pages);

        // Once in the log, once in the text as it was signed.
        Assert.Equal(2, paper.Split("Trims and autopilot: roll trim neutral; yaw trim not fitted; autopilot disconnected.").Length - 1);
    }

    [Fact]
    public async Task A_turned_fork_has_no_table_of_eccentrics()
    {
        var (file, pages) = await Print(await hangar.Squawk(School.Turned(Control.LeftStrutFork, 9, 10.5)));
        Keep("fork.pdf", file);
        var paper = string.Join(' ', pages);

        Holds(paper, "Otherwise as found Left rear strut fork 9 turns out from fully in. Lock wire in place.", "Otherwise as left Left rear strut fork 10.5 turns out from fully in. Lock wire renewed.");
        Assert.DoesNotContain("no eccentric", paper, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("Eccentric bushing", paper, StringComparison.Ordinal);
        Assert.DoesNotContain("not recorded", paper, StringComparison.Ordinal);
    }

    /// <summary>What was read of an eccentric stays on record though nobody turned it, and the table says as much as the signed text.</summary>
    [Fact]
    public async Task Marks_that_were_read_and_not_turned_are_on_it_as_found_alone()
    {
        var read = School.Checked.Do(School.Mechanic, new AsFound(new(-15, -15, null, null), null));
        var rod = School.Turned(Control.LeftFlapRod, 1, 0).Entries.Skip(School.Checked.Length).Aggregate(read, (ledger, entry) =>
            ledger.Do(School.Mechanic, entry.Fact is AsFound found ? found with { Bushings = new(-15, -15, null, null) } : entry.Fact));

        var paper = string.Join(' ', (await Print(await hangar.Squawk(rod))).Pages);

        Holds(paper, "left wing, front 15° trailing edge up left wing, rear 15° trailing edge up No eccentric was touched.");
    }

    [Fact]
    public async Task Late_entries_keep_both_times_and_a_signed_paper_says_which_is_the_original()
    {
        var signed = School.TorquedDaysAgo(1).Do(School.Mechanic, School.Done);
        var number = await hangar.Squawk(signed.Do(School.Mechanic, new Noted("Wing support moved.", null, School.Noon - NodaTime.Duration.FromHours(3)))
            .Do(School.Mechanic, new Photographed(School.PictureHash, PhotoOf.SignedPaper, "The record, in ink.", signed.Length, Original.ThePaper)));

        var paper = string.Join(' ', (await Print(number)).Pages);

        Holds(paper, "Late entries", "Torqued: left", "2026-03-01 06:00 2026-03-02 12:00 Mira Mechanic", "Wing support moved.", "2026-03-02 03:00 2026-03-02 12:00 Mira Mechanic");
        Holds(paper, $"Signed on paper too, photographed in entry {signed.Length + 2}: the paper is the original");
    }

    [Fact]
    public async Task A_sticker_is_one_small_page_with_the_release_and_its_signature()
    {
        var (file, pages) = await Print(await hangar.Squawk(School.Closed), "?size=sticker");
        Keep("sticker.pdf", file);

        var page = Assert.Single(pages);
        using var document = PdfDocument.Open(file);
        // A6: 105 by 148 millimetres.
        Assert.Equal((105, 148), (Math.Round(document.GetPage(1).Width / 72 * 25.4), Math.Round(document.GetPage(1).Height / 72 * 25.4)));
        Holds(page, "Left eccentric turned half a flat, trailing edge down.", "190 in·lb, wrench TW-3", "1234.5 h", "approved for return to service", "Conrad Certifier", Hangar.NumberOf(School.Certifier.Certificates[0]), "page 1 of 1");
    }

    [Fact]
    public async Task Every_page_says_what_it_belongs_to_and_how_many_there_are()
    {
        var number = await hangar.Squawk(School.Approved);
        var ledger = await hangar.Ledger(number);

        var (_, pages) = await Print(number);

        Assert.True(pages.Count > 1);
        await using var db = hangar.Site.OpenDatabase();
        var head = Convert.ToHexStringLower(db.Squawks.Single(row => row.Id == ledger.Id).HeadHash);
        Assert.All(pages.Index(), page => Holds(page.Item, $"Squawk S-{number}", $"page {page.Index + 1} of {pages.Count}", head));
    }

    [Theory, InlineData("", 595, 842), InlineData("?size=a4", 595, 842), InlineData("?size=letter", 612, 792)]
    public async Task It_is_printed_on_the_paper_that_was_asked_for(string query, double width, double height)
    {
        var number = await hangar.Squawk(School.Worked);

        var (file, _) = await Print(number, query);

        using var document = PdfDocument.Open(file);
        Assert.Equal(width, document.GetPage(1).Width, 1.0);
        Assert.Equal(height, document.GetPage(1).Height, 1.0);
    }

    [Fact]
    public async Task Paper_that_is_not_kept_is_refused_by_name()
    {
        using var browser = await hangar.As(School.Office);

        using var answer = await browser.Http.GetAsync(new Uri("/squawks/1/record.pdf?size=napkin", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("napkin", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Work_that_is_not_approved_says_so_and_leaves_a_line_for_ink()
    {
        var (file, pages) = await Print(await hangar.Squawk(School.Inspected));
        Keep("not-approved.pdf", file);
        var paper = string.Join(' ', pages);

        Holds(paper, "Not approved", "is not approved for return to service", "To be signed by the certifier", "Not logged.");
        Assert.DoesNotContain("Conrad Certifier", paper, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Until_the_check_flight_is_logged_it_says_that_passengers_are_barred()
    {
        var (_, pages) = await Print(await hangar.Squawk(School.Approved));

        Holds(pages[0], "Approved, passengers barred", "14 CFR 91.407(b)");
    }

    [Fact]
    public async Task What_was_superseded_or_corrected_stays_readable_and_is_marked()
    {
        var failed = School.Worked.Do(School.Inspector, School.Inspection with { Passed = false, Findings = "Stripe missing." });
        var again = failed.Do(School.Mechanic, School.Torque).MeasuredAgain().Do(School.Mechanic, School.Done with { Description = "Torqued and striped again." }).Do(School.Inspector, School.Inspection);
        var signed = again.Entries.Last(entry => entry.Fact is WorkDone).Sequence;
        var corrected = again.Do(School.Mechanic, new Noted("The nut was MS-invented-2.", signed));

        var (file, pages) = await Print(await hangar.Squawk(corrected));
        Keep("superseded.pdf", file);
        var paper = string.Join(' ', pages);

        Holds(paper, "Torqued and striped again.", "Superseded and corrected entries", $"superseded by entry {signed}", "The nut was MS-invented-2.",
            $"What was done (entry {signed}, corrected by entry {corrected.Length}: see below)");
    }

    [Fact]
    public async Task A_signer_renamed_in_the_register_is_printed_by_the_name_that_was_signed_and_the_new_one_is_said()
    {
        var who = await hangar.Site.AddPerson("Cora Maiden", "cora@school.example", [Authority.Certifier], certificates: [new CertificateRow { Kind = "mechanic-airframe", Number = "INV-CORA-7", RecentUntil = new(2030, 1, 1) }]);
        var number = await hangar.Squawk(School.Inspected);
        await hangar.Add(number, School.Certifier with { Id = who }, School.Approval);
        using var office = await hangar.As(School.Office);
        await using var db = hangar.Site.OpenDatabase();
        var file = $"/people/{db.People.Single(person => person.Id == who).Number}";

        await office.Submit(await office.Open(file), new() { ["newName"] = "Cora Married", ["reason"] = "Married." }, "form:has(input[value=rename])");

        var (paper, pages) = await Print(number);
        Keep("renamed.pdf", paper);
        var text = string.Join(' ', pages);
        Holds(text, "Cora Maiden (now Cora Married)", "Approved by Cora Maiden, ");
        Assert.DoesNotContain("Approved by Cora Married", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_remark_on_a_signed_act_is_printed_as_a_remark_and_marks_nothing()
    {
        var approval = School.Approved.Length;
        var remarked = School.Approved.Do(School.Student, new Noted("The nut looked old.", null, RemarkOn: approval));

        var (file, pages) = await Print(await hangar.Squawk(remarked));
        Keep("remarked.pdf", file);
        var paper = string.Join(' ', pages);

        Holds(paper, "Remarks", "The nut looked old.", $"remark by Stefan Student, entry {approval + 1}");
        Assert.DoesNotContain("corrected by", paper, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_earlier_round_can_still_be_printed()
    {
        var second = School.Flown.Do(School.Mechanic, School.Verdict(VerdictWord.AdjustAgain)).Do(School.Mechanic, new RoundOpened("Not cured."));

        var (_, pages) = await Print(await hangar.Squawk(second), "?round=1");

        Holds(pages[0], "round 1", "Left eccentric turned half a flat");
    }

    [Theory, InlineData("?round=2"), InlineData("?round=0"), InlineData("?round=-3")]
    public async Task A_round_without_signed_work_has_no_record(string query)
    {
        var number = await hangar.Squawk(School.Worked);
        using var browser = await hangar.As(School.Office);

        using var answer = await browser.Http.GetAsync(new Uri($"/squawks/{number}/record.pdf{query}", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
