using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Plots;

namespace Rigging.Web.Assessment;

/// <summary>What one person sees of an assessment now. Computed afresh from the ledger each time; nothing here is on record until somebody records it.</summary>
/// <param name="Airframe">Null when the aircraft has none on file.</param>
/// <param name="Assessment">Null when there is no airframe, or when the evidence does not fit it.</param>
/// <param name="Faults">What in the evidence does not fit the airframe.</param>
/// <param name="Charts">Readings with the line and the band of what is expected.</param>
sealed record AssessmentView(SquawkFile File, Airframe? Airframe, LedgerAssessment? Assessment, IReadOnlyList<Fault> Faults, IReadOnlyList<Chart> Charts)
{
    /// <param name="lessons">How earlier corrections turned out.</param>
    public static AssessmentView Of(SquawkFile file, IReadOnlyList<EarlierCorrection>? lessons = null)
    {
        if (file.Facts.Airframe is not { } onFile) return new(file, null, null, [], []);
        var airframe = onFile.Read();
        var faults = ContractReader.ReadRequest(EvidenceRequest.Of(file.Ledger, onFile, null, file.Facts.DamageElsewhere).Json).Faults;
        if (faults.Count > 0) return new(file, airframe, null, faults, []);
        var assessment = LedgerAssessment.Of(file.Ledger, onFile, lessons, file.Facts.DamageElsewhere);
        return new(file, airframe, assessment, [], assessment.Elsewhere is { } outlook
            ? FlownPlots.Of(new FlownEvidence(assessment.Request, airframe, outlook), FlownEvidence.BeforeWork(file.Ledger, onFile)) : []);
    }

    // Solved once for all that is shown.
    readonly Aeroplane? aeroplane = Airframe is null ? null : new(Airframe);

    /// <summary>Null when nothing was observed.</summary>
    public WhatIf? What { get; } = Assessment is { Elsewhere: { } outlook } && Airframe is not null ? new(outlook, Airframe, Assessment.Request) : null;

    public Equivalents? Coins => aeroplane is null ? null : new(aeroplane);

    public IReadOnlyList<EvidenceLine> Evidence => evidence ??= Assessment is { Elsewhere: { } weighed } && Coins is { } coins ? EvidenceLines.Of(weighed, Assessment.Fact.Request, coins) : [];

    IReadOnlyList<EvidenceLine>? evidence;

    /// <summary>What the panels' difference does to the lift, once that cause is worth drawing; null before.</summary>
    public Drawings.Drawing? SpanLoad => aeroplane is not null && Assessment?.Response.Causes.FirstOrDefault(cause => cause.Cause == Cause.PanelIncidenceDifference) is { Probability: >= WorthDrawing, Amplitude: { Mean: var deg } panels } && WhatIsKnown.Of(panels.Low, panels.High).HasSide()
        && aeroplane.LiftAlongTheSpan(deg) is var (level, change)
        ? Drawings.SpanLoadView.Draw(level, change, Directions.Difference(deg, "panel", "more incidence")) : null;

    const double WorthDrawing = 0.3;

    public IReadOnlyList<BrokenRule> RecordBlocked => File.WhatBlocks<Assessed>();

    public IReadOnlyList<BrokenRule> AgreeBlocked => File.WhatBlocks<CorrectionAgreed>();

    /// <summary>The same answer to the same evidence is on record already.</summary>
    public bool IsRecorded => Assessment is { Fact: var now } && File.Ledger.Entries.LastOrDefault(entry => entry.Fact is Assessed)?.Fact is Assessed last
        && last.Request == now.Request && last.LibraryVersion == now.LibraryVersion && last.PriorsVersion == now.PriorsVersion;

    /// <summary>Causes that are assessed, the likeliest first, then the rest in the catalogue's order.</summary>
    public IEnumerable<CauseEstimate> Causes => Assessment!.Response.Causes.OrderByDescending(cause => cause.Probability ?? -1);
}
