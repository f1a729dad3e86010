namespace Rigging.Mechanics.Tests.Cases;

/// <summary>
/// Complaints out of practice, held against what a good mechanic would accept. The table in <c>docs/cases.md</c> lists every one of them;
/// <c>RIGGING_WRITE_CASES=1</c> before the test program writes it anew.
/// </summary>
public class CasesTests
{
    public static TheoryData<string> Used => [.. PractitionersCase.All.Where(report => report.Unusable is null).Select(report => report.Number)];

    [Theory, MemberData(nameof(Used))]
    public void Practitioners_cases(string number)
    {
        var report = PractitionersCase.All.Single(one => one.Number == number);
        var missing = report.Expect!.Missing(report.Answer).ToArray();

        if (Listed().Contains($"| {number} | fail |", StringComparison.Ordinal))
            Assert.NotEmpty(missing);
        else
            Assert.Empty(missing);
    }

    [Fact]
    public void At_least_thirty_five_are_used() => Assert.InRange(Used.Count, 35, int.MaxValue);

    [Fact]
    public void The_table_of_cases_is_current()
    {
        var table = Table();
        if (Environment.GetEnvironmentVariable("RIGGING_WRITE_CASES") == "1")
            File.WriteAllText(Document, table);
        Assert.Equal(table, Listed());
    }

    static string Document => Path.Combine(Root(), "docs", "cases.md");

    static string Listed() => File.Exists(Document) ? File.ReadAllText(Document).ReplaceLineEndings("\n") : "";

    static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "Rigging.sln")))
            folder = folder.Parent;
        return folder.FullName;
    }

    static string Table()
    {
        var (rows, passed, failed, unusable) = (new List<string>(), 0, 0, 0);
        foreach (var report in PractitionersCase.All)
        {
            if (report.Unusable is { } why)
            {
                unusable++;
                rows.Add($"| {report.Number} | unusable | {report.Story} | {why} |");
                continue;
            }
            var answer = report.Answer;
            var missing = report.Expect!.Missing(answer).ToArray();
            _ = missing.Length == 0 ? passed++ : failed++;
            rows.Add($"| {report.Number} | {(missing.Length == 0 ? "pass" : "fail")} | {report.Story} | {(missing.Length == 0 ? report.Expect.Reached(answer) : string.Join("; ", missing))} |");
        }
        return $"""
            # Cases out of practice

            Complaints that practitioners reported, put into the contract's form: numbers as reported, words as words, the airframe invented, in our own words. What a report does not tell was assumed and stands in the case's file under `tests/Rigging.Mechanics.Tests/Data/cases`. Expected is what a good mechanic would accept: the cause found in the end among the first three (causes that the evidence cannot tell apart from one of them, or that are as likely, count), the gates raised, the eccentric not proposed where it was not the cure, and among the first three next tests one that would have found it.

            These reports were collected for variety, so they show where the assessment errs and not how often. {passed} pass, {failed} fail, {unusable} could not be put as a request. `Practitioners_cases` asserts this table, and a test that it is current; `RIGGING_WRITE_CASES=1` before the test program writes it.

            | case | result | story | why |
            |---|---|---|---|
            {string.Join('\n', rows)}
            """.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
    }
}
