using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Rules;

/// <summary>One row: this kind of entry may be made at these stages by people with one of these authorities, and leads there.</summary>
/// <param name="By">In order of preference: the first that the person holds is the one they act under.</param>
/// <param name="To">Null: the stage stays.</param>
/// <param name="Signed">Needs the full text shown and re-authentication.</param>
public sealed record Move(Type Kind, IReadOnlyList<Stage> At, IReadOnlyList<Authority> By, Stage? To, bool Signed);

/// <summary>Entry kind × stage × authority → next stage. The fold reads it, the rules enforce it, the pages ask it: one table.</summary>
public static class MoveTable
{
    static readonly Stage[] BeforeWork = [Stage.Called, Stage.InChecks, Stage.CorrectionAgreed];
    static readonly Stage[] Checking = [Stage.Called, Stage.InChecks];
    static readonly Stage[] NotYetWorked = [Stage.Reported, .. BeforeWork];
    static readonly Stage[] Worked = [Stage.InWork, Stage.AwaitingInspection, Stage.AwaitingApproval, Stage.ApprovedPassengersBarred, Stage.CheckFlightLogged];
    static readonly Stage[] All = Enum.GetValues<Stage>();
    static readonly Authority[] Anyone = [Authority.Pilot, Authority.Office, Authority.Mechanic, Authority.Inspector, Authority.Certifier];
    static readonly Authority[] Hangar = [Authority.Mechanic, Authority.Inspector];
    static readonly Authority[] OfficeAndHangar = [Authority.Mechanic, Authority.Inspector, Authority.Office];

    public static IReadOnlyList<Move> Rows { get; } =
    [
        Row<Reported>([], [.. Anyone, Authority.Reporter], Stage.Reported),
        Row<Called>([Stage.Reported], OfficeAndHangar, Stage.Called),
        Row<Called>([.. Stages.Open.Except([Stage.Reported])], OfficeAndHangar),
        Row<GroundChecked>([Stage.Reported], Hangar),
        Row<GroundChecked>(BeforeWork, Hangar, Stage.InChecks),
        Row<GroundChecked>([.. Worked], Hangar),
        Row<EvaluationFlown>(Checking, [Authority.Pilot], Stage.InChecks),
        Row<Assessed>([Stage.InChecks, Stage.CorrectionAgreed], Hangar),
        Row<CorrectionAgreed>([Stage.InChecks], Hangar, Stage.CorrectionAgreed),
        Row<CorrectionWithdrawn>([Stage.CorrectionAgreed], Hangar, Stage.InChecks),
        Row<WorkStarted>([Stage.CorrectionAgreed], [Authority.Mechanic], Stage.InWork),
        Row<AsFound>(Checking, Hangar, Stage.InChecks),
        Row<AsFound>([Stage.InWork], [Authority.Mechanic]),
        Row<TorqueApplied>([Stage.InWork], [Authority.Mechanic]),
        Row<TorqueRechecked>([Stage.Closed, Stage.WithinLimitsMonitored], Hangar),
        // Whoever signed in ink photographs the paper, after the end too.
        Row<Photographed>([.. All.Except([Stage.Reported])], Anyone),
        Row<WorkHandedOver>([Stage.InWork], [Authority.Mechanic]),
        Row<WorkDone>([Stage.InWork], [Authority.Mechanic], Stage.AwaitingInspection, signed: true),
        // Also a second look, asked for by the certifier or by a pilot who found a control wrong before flight: what follows it is a new approval.
        Row<Inspected>([Stage.AwaitingInspection, Stage.AwaitingApproval, Stage.ApprovedPassengersBarred], [Authority.Inspector], Stage.AwaitingApproval, signed: true),
        Row<Approved>([Stage.AwaitingApproval], [Authority.Certifier], Stage.ApprovedPassengersBarred, signed: true),
        Row<CheckFlown>([Stage.ApprovedPassengersBarred], [Authority.Pilot], Stage.CheckFlightLogged, signed: true),
        // Flown again where the first flight was not enough evidence.
        Row<CheckFlown>([Stage.CheckFlightLogged], [Authority.Pilot], signed: true),
        Row<VerdictGiven>([Stage.CheckFlightLogged], Hangar),
        Row<Closed>([Stage.CheckFlightLogged], [Authority.Inspector], Stage.Closed, signed: true),
        Row<RoundOpened>([Stage.CheckFlightLogged], Hangar, Stage.InChecks),
        Row<Waiting>([.. Stages.Open], OfficeAndHangar),
        Row<Resumed>([.. Stages.Open], OfficeAndHangar),
        Row<Noted>(All, Anyone),
        // Whoever keeps the aircraft's hours, and after the end too: a wrong one is found when the next is entered.
        Row<TotalTimeCorrected>([.. All], [.. OfficeAndHangar, Authority.Certifier]),
        Row<NoFaultFound>(Checking, [Authority.Inspector], Stage.NoFaultFound, signed: true),
        Row<WithinLimits>([.. Checking, Stage.CheckFlightLogged], [Authority.Inspector, Authority.Certifier], Stage.WithinLimitsMonitored, signed: true),
        Row<JoinedTo>(NotYetWorked, Hangar, Stage.Joined),
        Row<HandedOver>(NotYetWorked, Hangar, Stage.HandedOver),
    ];

    /// <summary>The row for a kind at a stage; null where the table has none.</summary>
    public static Move? Find(Type kind, Stage? stage) =>
        Rows.FirstOrDefault(row => row.Kind == kind && (stage is { } at ? row.At.Contains(at) : row.At.Count == 0));

    /// <summary>Whether entries of this kind are signed.</summary>
    public static bool IsSigned(Type kind) => Rows.Any(row => row.Kind == kind && row.Signed);

    /// <summary>A damage inspection that lifts a grounding lets people fly, as the signed acts do.</summary>
    public static bool LiftsAGrounding(Fact fact, SquawkState state) =>
        fact is GroundChecked { Check: Check.DamageInspection, Clear: true } && state.DamageSuspected;

    /// <summary>Whether this entry, here, needs a signature.</summary>
    public static bool MustBeSigned(Fact fact, SquawkState state) =>
        IsSigned(fact.GetType()) || LiftsAGrounding(fact, state) || fact is Noted { Corrects: { } corrected } && state.Signed.Contains(corrected);

    /// <summary>Who may make this entry here, in order of preference.</summary>
    public static IReadOnlyList<Authority> By(Fact fact, SquawkState state) =>
        LiftsAGrounding(fact, state) ? [Authority.Inspector] : Find(fact.GetType(), state.Stage)?.By ?? [];

    /// <summary>Where an entry leads. An inspection that does not pass sends the work back.</summary>
    public static Stage? Next(SquawkState state, Fact fact) => fact switch
    {
        Inspected { Passed: false } => Stage.InWork,
        NewerEntry => state.Stage,
        _ => Find(fact.GetType(), state.Stage) is { } row ? row.To ?? state.Stage : state.Stage,
    };

    static Move Row<T>(Stage[] at, Authority[] by, Stage? to = null, bool signed = false) where T : Fact => new(typeof(T), at, by, to, signed);
}
