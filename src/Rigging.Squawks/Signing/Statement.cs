using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Signing;

/// <summary>What a signed text may settle: each has one answer in one text.</summary>
enum Question
{
    PassengersBarred,
    EccentricTouched,
    InspectionPassed,
    DifferenceAccepted,
    PeopleAboard,
    FaultFound,
}

/// <summary>One answer to one question, as its line gives it.</summary>
readonly record struct Claim(Question About, string Answer)
{
    public Claim(Question about, bool holds) : this(about, holds ? "yes" : "no") { }
}

/// <summary>A line of a signed text, and what it settles.</summary>
sealed record Statement(string Text, params IReadOnlyList<Claim> Claims)
{
    public static implicit operator Statement(string text) => new(text);

    /// <summary>Lines that answer one question differently: nobody signs both.</summary>
    public static IEnumerable<BrokenRule> Contradictions(IEnumerable<Statement> text) =>
        from claimed in text.SelectMany(line => line.Claims.Select(claim => (Line: line.Text, Claim: claim))).GroupBy(said => said.Claim.About)
        let first = claimed.First()
        from other in claimed.Where(said => said.Claim.Answer != first.Claim.Answer).Take(1)
        select new BrokenRule("text-contradicts-itself", $"The text to sign says both “{first.Line}” and “{other.Line}”. One of them is not so: put it right first.", "text");
}
