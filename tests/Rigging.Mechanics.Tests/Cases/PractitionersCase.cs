using System.Text.Json;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Cases;

/// <summary>
/// One complaint as a practitioner reported it, put into the contract's form with an invented airframe, and what a good mechanic would
/// accept as an answer. What the record does not tell is under <see cref="Assumed"/>.
/// </summary>
/// <param name="Number">Of the file.</param>
/// <param name="Unusable">Why it cannot be put as a request; null when it can.</param>
sealed record PractitionersCase(string Number, string Story, string? Unusable, string? Assumed, string? Request, Expectation? Expect)
{
    static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Data");

    public static IEnumerable<PractitionersCase> All { get; } = [.. Directory.GetFiles(Path.Combine(Folder, "cases"), "*.json").Order(StringComparer.Ordinal).Select(Read)];

    readonly Lazy<AssessmentResponse> answer = new(() => Assess(Request!));

    /// <summary>What the assessment says, worked out once.</summary>
    public AssessmentResponse Answer => answer.Value;

    static AssessmentResponse Assess(string request)
    {
        var read = ContractReader.ReadRequest(request);
        Assert.Empty(read.Faults);
        var airframe = ContractReader.ReadAirframe(File.ReadAllText(Path.Combine(Folder, "airframes", $"{read.Value!.AirframeId}.json")));
        Assert.Empty(airframe.Faults);
        Assert.Empty(ContractReader.Check(read.Value, airframe.Value!));
        return Assessor.Assess(read.Value, airframe.Value!);
    }

    static PractitionersCase Read(string file)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(file));
        var root = document.RootElement;
        string? Text(string name) => root.TryGetProperty(name, out var value) ? value.GetString() : null;
        return new(
            Path.GetFileNameWithoutExtension(file), Text("story")!, Text("unusable"), Text("assumed"),
            root.TryGetProperty("request", out var request) ? request.GetRawText() : null,
            root.TryGetProperty("expect", out var expect) ? expect.Deserialize<Expectation>(JsonSerializerOptions.Web) : null);
    }
}

/// <param name="TrueCauses">What it was in the end, in the catalogue's words; any of them will do; empty when nobody found out.</param>
/// <param name="AmongFirst">How many causes, and how many next tests, a mechanic would read.</param>
/// <param name="Gates">Codes of refusals, or prerequisites, that must be raised.</param>
/// <param name="EccentricProposed">Null where either would do.</param>
/// <param name="NextTestOneOf">Beginnings of the tests that would have found it; not asked for where the answer already moves what acts on the true cause.</param>
sealed record Expectation(IReadOnlyList<string> TrueCauses, int AmongFirst, IReadOnlyList<string> Gates, bool? EccentricProposed, IReadOnlyList<string> NextTestOneOf)
{
    /// <summary>What in the answer a good mechanic would not accept; empty when nothing.</summary>
    public IEnumerable<string> Missing(AssessmentResponse answer)
    {
        if (TrueCauses.Count > 0 && !IsAmongFirst(answer))
            yield return $"{Best(answer)}, behind {string.Join(", ", Ranked(answer).Take(AmongFirst).Select(cause => Wire.Word(cause.Cause)))}";
        foreach (var gate in Gates.Except([.. answer.Refusals.Select(refusal => refusal.Code), .. answer.Prerequisites.Select(Wire.Word)]))
            yield return $"{gate} not raised";
        var eccentric = answer.Correction?.Moves.Any(move => move.Control is AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric) ?? false;
        if (EccentricProposed is { } expected && eccentric != expected)
            yield return eccentric ? "the eccentric is proposed" : "the eccentric is not proposed";
        if (!Cures(answer) && (TestAt(answer) is not { } at || at >= AmongFirst))
            yield return $"next tests are {string.Join(", ", answer.NextTests.Take(AmongFirst).Select(test => test.Test))}";
    }

    /// <summary>Whether it already moves what acts on the true cause; then no further test has to find it.</summary>
    bool Cures(AssessmentResponse answer) => answer.Correction?.Moves.Any(move => TrueCauses.Contains(ActsOn(move.Control))) ?? false;

    static string ActsOn(AdjustableControl control) => Wire.Word(control switch
    {
        AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric => Cause.PanelIncidenceDifference,
        AdjustableControl.LeftStrutFork or AdjustableControl.RightStrutFork => Cause.TipIncidenceDifference,
        AdjustableControl.LeftFlapRod or AdjustableControl.RightFlapRod => Cause.FlapDifference,
        AdjustableControl.AileronNeutral => Cause.AileronNeutralOffset,
        AdjustableControl.AileronTab => Cause.AileronFloat,
        _ => Cause.RudderOrFinOffset,
    });

    /// <summary>How the answer stands to the true cause and to the test that would have found it, for the table.</summary>
    public string Reached(AssessmentResponse answer) =>
        $"{(TrueCauses.Count == 0 ? "cause never found" : Best(answer))}; {(Cures(answer) ? "and what acts on it is moved" : TestAt(answer) is { } at ? $"test {at + 1}: {answer.NextTests[at].Test}" : "no such test")}";

    /// <summary>Alike in everything observed, or as likely, counts as one of the first.</summary>
    bool IsAmongFirst(AssessmentResponse answer)
    {
        var ranked = Ranked(answer);
        var first = ranked.Take(AmongFirst).ToArray();
        var least = first.Length > 0 ? first[^1].Probability - 0.01 : 1;
        return ranked.Any(cause => TrueCauses.Contains(Wire.Word(cause.Cause)) && (cause.Probability >= least
            || answer.Indistinguishable.Any(group => group.Contains(cause.Cause) && group.Intersect(first.Select(f => f.Cause)).Any())));
    }

    string Best(AssessmentResponse answer)
    {
        var ranked = Ranked(answer);
        var at = ranked.FindIndex(cause => TrueCauses.Contains(Wire.Word(cause.Cause)));
        return at < 0
            ? $"{string.Join(" or ", TrueCauses)} not assessed"
            : FormattableString.Invariant($"{Wire.Word(ranked[at].Cause)} in place {at + 1} at {ranked[at].Probability:0.0}");
    }

    int? TestAt(AssessmentResponse answer) => answer.NextTests.Select((test, index) => (test, index))
        .Where(next => NextTestOneOf.Any(wanted => next.test.Test.StartsWith(wanted, StringComparison.Ordinal)))
        .Select(next => (int?)next.index)
        .FirstOrDefault();

    static List<CauseEstimate> Ranked(AssessmentResponse answer) =>
        [.. answer.Causes.Where(cause => cause.Probability is not null).OrderByDescending(cause => cause.Probability)];
}
