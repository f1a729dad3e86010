using System.Collections.Immutable;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Ledgers;

/// <summary>When something happened; of two at the same time the later entry is the later.</summary>
public readonly record struct EntryMoment(Instant At, int Sequence)
{
    public bool IsAfter(EntryMoment other) => (At, Sequence).CompareTo((other.At, other.Sequence)) > 0;
}

/// <summary>What a squawk's entries prove so far: a fold, one entry at a time, nothing else.</summary>
public sealed record SquawkState
{
    public static readonly SquawkState Nothing = new();

    /// <summary>How many entries were folded.</summary>
    public int Length { get; init; }

    /// <summary>Null before the report.</summary>
    public Stage? Stage { get; init; }

    public Reported? Report { get; init; }

    public PersonId? Reporter { get; init; }

    /// <summary>Counts from 1; another round starts when a check flight shows no cure.</summary>
    public int Round { get; init; } = 1;

    public Called? Call { get; init; }

    /// <summary>Grounding questions answered with yes, a control that moved the wrong way, work that made it worse: what no damage inspection has cleared since, in words.</summary>
    public ImmutableList<string> DamageQuestions { get; init; } = [];

    public bool RedFlagged => DamageQuestions.Count > 0;

    /// <summary>The last damage inspection: true clear, false damage found, null none.</summary>
    public bool? DamageClear { get; init; }

    /// <summary>Damage is in doubt: it is grounded until a damage inspection clears it. The one answer for status, rules, assessment, card and words.</summary>
    public bool DamageSuspected => RedFlagged || DamageClear == false;

    /// <summary>When what grounds it last came on record; null unless <see cref="DamageSuspected"/>.</summary>
    public Instant? SuspectedAt { get; init; }

    /// <summary>
    /// The last word that counts on each check, and when it was measured: of each cable, tab and surface by itself. What has no value is not among them.
    /// </summary>
    public ImmutableSortedDictionary<string, (EntryMoment At, GroundChecked Fact)> Checks { get; init; } =
        ImmutableSortedDictionary.Create<string, (EntryMoment At, GroundChecked Fact)>(StringComparer.Ordinal);

    /// <summary>The cables that the airframe file named when a tension was last recorded.</summary>
    public IReadOnlyList<string> CablesOnFile { get; init; } = [];

    public Waiting? Waiting { get; init; }

    /// <summary>Sequences of the entries that carry a signature.</summary>
    public ImmutableSortedSet<int> Signed { get; init; } = [];

    public bool HasNewerEntries { get; init; }

    /// <summary>Torqued in any round and not looked at again since the squawk was over; the last application on each fastener.</summary>
    public ImmutableList<(int Sequence, TorqueApplied Torque)> StripesToSee { get; init; } = [];

    /// <summary>How the eccentrics stand as far as anybody recorded; null when nobody has.</summary>
    public BushingAngles? Settings { get; init; }

    /// <summary>The same for what is no eccentric, as far as anybody counted or measured.</summary>
    public ImmutableDictionary<Control, double> Adjusters { get; init; } = ImmutableDictionary<Control, double>.Empty;

    // This round only.
    public CorrectionAgreed? Correction { get; init; }

    public WorkStarted? WorkStarted { get; init; }

    public AsFound? AsFound { get; init; }

    /// <summary>Those that ended inside their limits.</summary>
    public ImmutableList<TorqueApplied> Torques { get; init; } = [];

    /// <summary>Those that ended above their limits, in this round.</summary>
    public ImmutableList<TorqueApplied> Overtorqued { get; init; } = [];

    /// <summary>Overtorqued, and not brought inside its limits since.</summary>
    public ImmutableList<TorqueApplied> OutOfLimits { get; init; } = [];

    /// <summary>When the work began, or a fastener was last torqued: what was measured before it is of another state. Null when no work has begun.</summary>
    public EntryMoment? MovedAt { get; init; }

    /// <summary>A fastener was torqued since the work was last signed, or since it began; one that is entered late counts by the time it speaks of.</summary>
    public bool TorqueSinceSigned { get; init; }

    /// <summary>When this round's work was last signed; null when it was not.</summary>
    public Instant? SignedAt { get; init; }

    /// <summary>By the last handover, which is the one that speaks of the latest time.</summary>
    public string? Loose { get; init; }

    /// <summary>Of which time the last handover speaks; null when this round has none.</summary>
    public Instant? HandedOverAt { get; init; }

    public (WorkDone Fact, PersonId By)? WorkDone { get; init; }

    /// <summary>The last correction of the total time since this round's work was signed; null when there is none.</summary>
    public (TotalTimeCorrected Fact, Entry Entry)? TotalTimeCorrected { get; init; }

    /// <summary>Total time at this round's work, as signed or as corrected since.</summary>
    public double? TotalTimeH => TotalTimeCorrected?.Fact.TotalTimeH ?? WorkDone?.Fact.TotalTimeH;

    /// <summary>Everyone with an entry in this round's work: none of them is independent.</summary>
    public ImmutableHashSet<PersonId> Workers { get; init; } = [];

    /// <summary>The same of every round.</summary>
    public ImmutableHashSet<PersonId> EverWorked { get; init; } = [];

    public (Inspected Fact, PersonId By)? Inspection { get; init; }

    public (Approved Fact, Entry Entry)? Approval { get; init; }

    public (CheckFlown Fact, PersonId By)? CheckFlight { get; init; }

    public VerdictGiven? Verdict { get; init; }

    /// <summary>What this squawk alone lets the aircraft do.</summary>
    public FlightStatus FlightStatus => Stage switch
    {
        null => FlightStatus.MayFly,
        Ledgers.Stage.Closed or Ledgers.Stage.NoFaultFound or Ledgers.Stage.WithinLimitsMonitored or Ledgers.Stage.Joined or Ledgers.Stage.HandedOver
            => FlightStatus.MayFly,
        _ when DamageSuspected || CalledSinceWork == Entries.Call.Grounded => FlightStatus.Grounded,
        Ledgers.Stage.Reported => FlightStatus.Held,
        Ledgers.Stage.InWork or Ledgers.Stage.AwaitingInspection or Ledgers.Stage.AwaitingApproval => FlightStatus.Held,
        Ledgers.Stage.ApprovedPassengersBarred => FlightStatus.CrewOnly,
        Ledgers.Stage.CheckFlightLogged => CheckFlight is { Fact.Satisfactory: true } ? AfterSatisfactoryFlight : FlightStatus.Grounded,
        _ => Call?.Call switch
        {
            Entries.Call.Grounded => FlightStatus.Grounded,
            Entries.Call.MayFlyWithLimits => FlightStatus.Limits,
            Entries.Call.NoRiggingHold => FlightStatus.MayFly,
            _ => FlightStatus.Held,
        },
    };

    /// <summary>
    /// The logged flight lifts the passenger bar. A call made since the work began still counts; the limits of one before it until the verdict says that the
    /// complaint is cured, and its grounding again where the verdict says that it is not.
    /// </summary>
    FlightStatus AfterSatisfactoryFlight => (CalledSinceWork, Call?.Call, Verdict?.Verdict) switch
    {
        (Entries.Call.MayFlyWithLimits, _, _) => FlightStatus.Limits,
        (null, Entries.Call.MayFlyWithLimits, not VerdictWord.Accepted) => FlightStatus.Limits,
        (null, Entries.Call.Grounded, VerdictWord.AdjustAgain) => FlightStatus.Grounded,
        _ => FlightStatus.MayFly,
    };

    /// <summary>The last call made since this round's work began: approval and flight answer the calls before it, not this one.</summary>
    public Call? CalledSinceWork { get; init; }

    public IReadOnlyList<Prerequisite> MissingPrerequisites => [.. Enum.GetValues<Prerequisite>().Where(prerequisite => !IsOnRecord(prerequisite))];

    /// <summary>Checked with its value, or said not to apply. Of the cables, each that the file named.</summary>
    public bool IsOnRecord(Prerequisite prerequisite) => Checks.Values.Any(last => CheckUnits.Serves(last.Fact.Check) == prerequisite)
        && (prerequisite != Prerequisite.Cables || CablesMissing(CablesOnFile).Count == 0);

    /// <summary>Which of these cables nobody has measured; none where somebody said that it does not apply.</summary>
    public IReadOnlyList<string> CablesMissing(IEnumerable<string> cables) =>
        Checks.Values.Any(last => last.Fact is { Check: Check.CableTension, NotApplicableReason: not null }) ? []
            : [.. cables.Where(cable => !Checks.ContainsKey(Key(Check.CableTension, cable)))];

    /// <summary>The last word on a check since something was moved; that it does not apply holds whenever it was said. Null when there is none.</summary>
    /// <param name="part">Null for any part.</param>
    public GroundChecked? SinceMoved(Check check, string? part)
    {
        var known = Checks.Values.Where(last => last.Fact.Check == check
            && (last.Fact.NotApplicableReason is not null || ((part is null || Key(check, last.Fact.Part()) == Key(check, part)) && IsSinceMoved(last.At)))).ToList();
        return known.Count == 0 ? null : known.Aggregate((one, other) => other.At.IsAfter(one.At) ? other : one).Fact;
    }

    /// <summary>What was measured since something was last moved, of what a move changes beside itself.</summary>
    public IReadOnlyList<GroundChecked> MeasuredAgain =>
    [
        .. Checks.Values.Where(known => known.Fact is { NotApplicableReason: null, Check: Check.CableTension or Check.ControlTravel or Check.FlapDifference } && IsSinceMoved(known.At))
            .Select(known => known.Fact).OrderBy(check => check.Check).ThenBy(check => check.Part(), StringComparer.Ordinal),
    ];

    /// <summary>The name of a surface among the parts of a check.</summary>
    public static string PartOf(ControlSurface surface, Side? side) => $"{surface} {side}";

    /// <summary>What the inspector is asked to see move: after what was disturbed, and after what the correction set out to move.</summary>
    public IReadOnlyList<Observation> ControlsToSee => ControlSense.AskFor(WorkDone?.Fact, Correction);

    /// <summary>
    /// The roll tendency that this round's work was expected to leave, °/s, right wing down positive, with its 90 % interval: of the plan, or as left where
    /// that differs; null where nothing was foreseen.
    /// </summary>
    public (double DegPerS, double Low, double High)? Expected => WorkDone switch
    {
        { Fact: { PredictedDegPerS: { } mean, PredictedLowDegPerS: { } low, PredictedHighDegPerS: { } high } } => (mean, low, high),
        { Fact.DiffersBecause: not null } => null,
        _ => Correction is { PredictedDegPerS: { } mean, PredictedLowDegPerS: { } low, PredictedHighDegPerS: { } high } ? (mean, low, high) : null,
    };

    /// <summary>The plan touches something that neither a bushing angle nor a number of its own describes: words have to.</summary>
    public bool MovesInWords => Correction?.Moves.Any(move => !move.Control.IsEccentric() && move.Numbers().To is null) == true;

    /// <summary>What was agreed on moves a control of this kind.</summary>
    public bool Plans(Func<Control, bool> kind) => Correction?.Moves.Any(move => kind(move.Control)) == true;

    public SquawkState With(Entry entry)
    {
        var next = entry.Fact switch
        {
            Reported report => (this with { Report = report, Reporter = entry.By }).Doubted(GroundingQuestions.Raised(report.RedFlags, report.Happened)),
            Called call => Doubted(GroundingQuestions.Raised(call.RedFlags, call.Happened)) with { Call = call, CalledSinceWork = WorkStarted is null ? null : call.Call },
            GroundChecked check => Checked(entry, check),
            CorrectionAgreed correction => this with { Correction = correction },
            CorrectionWithdrawn => this with { Correction = null },
            WorkStarted started => Working(entry) with { WorkStarted = started, MovedAt = MomentOf(entry) },
            // Looking at the marks during the checks is not work: whoever looked may still inspect.
            AsFound found => (Stage == Ledgers.Stage.InWork ? Working(entry) : this) with { AsFound = found, Settings = found.Bushings.Over(Settings), Adjusters = Over(found.Adjusters) },
            TorqueApplied torque => Torqued(entry, torque),
            TorqueRechecked again => this with { StripesToSee = StripesToSee.RemoveAll(seen => seen.Sequence == again.TorqueEntry) },
            WorkHandedOver handover => entry.Moment() is var moment && moment < HandedOverAt ? Working(entry) : Working(entry) with { Loose = handover.Loose, HandedOverAt = moment },
            WorkDone done => Working(entry) with { WorkDone = (done, entry.By), TotalTimeCorrected = null, SignedAt = entry.At, TorqueSinceSigned = false, Inspection = null, Settings = done.AsLeft.Over(Settings), Adjusters = Over(done.AdjustersAsLeft) },
            Inspected inspected => Doubted(inspected.Observations.Any(o => o.WrongWay) ? [Words.WrongWay] : []) with { Inspection = (inspected, entry.By), Approval = null },
            Approved approved => this with { Approval = (approved, entry) },
            CheckFlown flown => this with { CheckFlight = (flown, entry.By), Verdict = null },
            VerdictGiven verdict => Doubted(verdict.WorseThanBefore == true ? [Words.WorseThanBefore] : []) with { Verdict = verdict },
            RoundOpened => NewRound(),
            TotalTimeCorrected corrected when WorkDone is not null => this with { TotalTimeCorrected = (corrected, entry) },
            Waiting waiting => this with { Waiting = waiting },
            Resumed => this with { Waiting = null },
            NewerEntry => this with { HasNewerEntries = true },
            _ => this,
        };
        if (entry.Signature is not null) next = next with { Signed = Signed.Add(entry.Sequence) };
        if (!next.DamageSuspected) next = next with { SuspectedAt = null };
        else if (next.DamageQuestions.Count > DamageQuestions.Count || entry.Fact is Inspected { Passed: false } or GroundChecked { Check: Check.DamageInspection }) next = next with { SuspectedAt = entry.At };
        return next with { Stage = MoveTable.Next(this, entry.Fact), Length = Length + 1 };
    }

    SquawkState Checked(Entry entry, GroundChecked check)
    {
        // Measuring is not work: whoever measured may still inspect.
        var next = this with
        {
            DamageClear = check is { Check: Check.DamageInspection, Clear: { } clear } ? clear : DamageClear,
            DamageQuestions = check is { Check: Check.DamageInspection, Clear: true } ? [] : DamageQuestions,
            CablesOnFile = check.Check == Check.CableTension ? check.CablesOnFile ?? [] : CablesOnFile,
        };
        var notApplicable = check.NotApplicableReason is not null;
        if (!notApplicable && !check.HasItsValue()) return next;
        // A word on the whole check stands for all its parts, and is overtaken by a later measurement of one.
        var others = Checks.RemoveRange(Checks.Where(last => last.Value.Fact.Check == check.Check && (notApplicable || last.Value.Fact.NotApplicableReason is not null)).Select(last => last.Key));
        return next with { Checks = others.SetItem(Key(check.Check, notApplicable ? null : check.Part()), (MomentOf(entry), check)) };
    }

    SquawkState Torqued(Entry entry, TorqueApplied torque)
    {
        var moved = MomentOf(entry);
        var next = Working(entry) with
        {
            MovedAt = IsSinceMoved(moved) ? moved : MovedAt,
            OutOfLimits = OutOfLimits.RemoveAll(other => Same(other.Fastener, torque.Fastener)),
            StripesToSee = StripesToSee.RemoveAll(seen => Same(seen.Torque.Fastener, torque.Fastener)),
        };
        return torque.IsAboveItsLimits()
            ? next with { Overtorqued = Overtorqued.Add(torque), OutOfLimits = next.OutOfLimits.Add(torque) }
            : next with { Torques = Torques.Add(torque), TorqueSinceSigned = TorqueSinceSigned || !(torque.HappenedAt < SignedAt), StripesToSee = next.StripesToSee.Add((entry.Sequence, torque)) };
    }

    /// <summary>Whether it happened after the work began and after a fastener was last torqued.</summary>
    public bool IsSinceMoved(EntryMoment moment) => MovedAt is { } moved && moment.IsAfter(moved);

    static EntryMoment MomentOf(Entry entry) => new(entry.Moment(), entry.Sequence);

    static string Key(Check check, string? part) => part is null ? $"{check}" : $"{check} {part.Trim().ToUpperInvariant()}";

    // Who looked before it happened has not looked.
    SquawkState Doubted(IEnumerable<string> raised) => raised.Except(DamageQuestions).ToList() is not { Count: > 0 } more ? this : this with
    {
        DamageQuestions = DamageQuestions.AddRange(more),
        DamageClear = DamageClear == true ? null : DamageClear,
        Checks = Checks.Remove(Key(Check.DamageInspection, null)),
    };

    ImmutableDictionary<Control, double> Over(IReadOnlyList<AdjusterSetting>? later) => Adjusters.SetItems((later ?? []).Select(setting => KeyValuePair.Create(setting.Control, setting.Value)));

    static bool Same(string fastener, string other) => string.Equals(fastener.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);

    SquawkState Working(Entry entry) => this with { Workers = Workers.Add(entry.By), EverWorked = EverWorked.Add(entry.By) };

    SquawkState NewRound() => this with
    {
        Round = Round + 1,
        Correction = null,
        WorkStarted = null,
        AsFound = null,
        Torques = [],
        Overtorqued = [],
        OutOfLimits = [],
        MovedAt = null,
        TorqueSinceSigned = false,
        SignedAt = null,
        Loose = null,
        HandedOverAt = null,
        WorkDone = null,
        TotalTimeCorrected = null,
        Workers = [],
        Inspection = null,
        Approval = null,
        CheckFlight = null,
        Verdict = null,
        // The school decides afresh whether it flies on; an unsatisfactory flight keeps it on the ground meanwhile.
        Call = FlightStatus == FlightStatus.Grounded ? new Called(Entries.Call.Grounded, "Not cured by the last round.", null) : Call,
        CalledSinceWork = null,
    };
}
