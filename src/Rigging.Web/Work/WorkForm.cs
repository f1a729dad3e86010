using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Work;

/// <summary>The work as typed, part by part: as found, as left, what was done.</summary>
static class WorkForm
{
    public static IReadOnlyList<Choice> Ways => [new("up", Say.TrailingEdgeUp), new("neutral", Say.Neutral), new("down", Say.TrailingEdgeDown)];

    /// <summary>The four bushings: field, name, and which eccentric they belong to.</summary>
    public static IReadOnlyList<(string Field, string Name, Control Eccentric)> Bushings =>
    [
        ("leftFront", Say.LeftWingFrontBushing, Control.LeftEccentric),
        ("leftRear", Say.LeftWingRearBushing, Control.LeftEccentric),
        ("rightFront", Say.RightWingFrontBushing, Control.RightEccentric),
        ("rightRear", Say.RightWingRearBushing, Control.RightEccentric),
    ];

    // The words about forks, rods and tabs, here and below: common practice, no source. The manual comes first, and they say so.

    /// <summary>What happens to whoever is careless, and what to do: before the work is started. Empty where no wing is moved.</summary>
    public static IEnumerable<(string Happens, string Do)> BeforeTheStart(SquawkState state)
    {
        if (state.Plans(Controls.IsEccentric)) yield return (Say.WingThatIsNotHeldDrops, $"{Say.SupportItAsManualSaysBefore} {Say.OneWingAtTimeLoosen}");
        if (state.Plans(Controls.IsStrutFork)) yield return (Say.WingWhoseStrutIsUndone, Say.SupportItBeforeForksBolt);
    }

    /// <summary>The same before anything is moved.</summary>
    public static IEnumerable<(string Happens, string Do)> BeforeTheMove(SquawkState state)
    {
        if (state.Plans(Controls.IsEccentric)) yield return (Say.TurningOneBushingAlone, $"{Say.TurnFrontAndRearTogether} {Say.WhichSideLooksThick}");
        if (state.Plans(Controls.IsStrutFork)) yield return (Say.ForkIsTurnedWithItsBoltOut, Say.WholeOrHalfTurns);
        if (state.Plans(Controls.IsFlapRod)) yield return (Say.FlapThatIsNotHeldDrops, Say.PutFlapOnSupport);
        if (state.Plans(Controls.IsTab)) yield return (Say.SurfaceThatIsNotHeldGives, Say.HoldSurfaceBendALittle);
    }

    /// <summary>What is done before a wing is moved, one after the other; a plan for an eccentric and a fork has the words of both. Empty where no wing is moved.</summary>
    public static IReadOnlyList<(string Field, string Words)> BeforeTurning(SquawkState state)
    {
        var (eccentric, fork) = (state.Plans(Controls.IsEccentric), state.Plans(Controls.IsStrutFork));
        string Of(string eccentrics, string forks) => (eccentric, fork) switch { (true, true) => $"{eccentrics} {forks}", (true, _) => eccentrics, _ => forks };
        return !eccentric && !fork ? [] :
        [
            ("move.held", Say.WingIsHeldByItsSupportAndNobody),
            ("move.loosened", Of(Say.BoltIsLoosenedAndNotWithdrawn, Say.ForksBoltIsOut)),
            ("move.free", Of(Say.BothBushingsOfThisJointTurn, Say.TurnsAreCountedFromAsFound)),
            ("move.zeroed", Say.MeasurementThatWillSeeTrailing),
        ];
    }

    /// <summary>Every step before this one is ticked.</summary>
    public static bool Reached(SquawkState state, TypedFields fields, string step) => BeforeTurning(state).TakeWhile(before => before.Field != step).All(before => fields.Ticked(before.Field));

    public static bool ReadyToTurn(SquawkState state, TypedFields fields) => BeforeTurning(state).All(step => fields.Ticked(step.Field));

    /// <summary>As far as this page knows a bolt is loose: ticked as loosened, and no torque on record for it since.</summary>
    public static bool BoltIsLoose(SquawkState state, TypedFields fields) => fields.Ticked("move.loosened") && state.Torques.Count < Loosened(state).Count;

    /// <summary>Four angles, each a size and a way; null where nothing was entered.</summary>
    public static BushingAngles Angles(TypedFields fields, Typed typed, string part)
    {
        double? Of(int i)
        {
            var (field, name, _) = Bushings[i];
            field = $"{part}.{field}";
            var way = fields[$"{field}.way"];
            if (way == "neutral") return 0;
            var size = typed.Number(fields[field], field, name, Say.Degrees);
            if (way is null && size is null) return null;
            if (size is null && fields.Text(field) is null) typed.Wrong("value-missing", Gaps.Fill(Say.NothingEnteredWantedDegrees, name), field);
            if (way is null && size != 0) typed.Wrong("not-a-choice", Gaps.Fill(Say.WhichWayItStandsIsNot, name), $"{field}.way");
            if (size < 0) typed.Wrong("value-out-of-range", Gaps.Fill(Say.HasSignWantedDegrees, name, fields[field]), field);
            return size is { } deg ? (way == "up" ? -deg : deg) + 0.0 : null;
        }
        return new(Of(0), Of(1), Of(2), Of(3));
    }

    /// <summary>How many rows a list shows: those with something in them and one more.</summary>
    public static int Rows(TypedFields fields, string row, params string[] columns)
    {
        var rows = 1;
        for (var i = 0; i < 40; i++)
            if (columns.Any(column => fields.Text($"{row}{i}.{column}") is not null)) rows = i + 2;
        return rows;
    }

    public static WorkDone Done(TypedFields fields, Typed typed, SquawkState state, Facts facts)
    {
        string Text(string field) => fields[$"done.{field}"] ?? "";
        return new(
            Text("description"),
            Angles(fields, typed, "done"),
            fields.Text("done.otherAsLeft"),
            Text("directionProof"),
            fields.Lines("done.disturbed"),
            Parts(fields, typed),
            [.. Resets(fields, typed), .. ToolsCounted(fields, typed)],
            fields.Ticked("done.everythingRefitted"),
            fields.Ticked("done.noTemporaryHardware"),
            fields.Ticked("done.nothingLoose"),
            fields.Text("done.differsBecause"),
            typed.Needed(fields["done.manHours"], "done.manHours", Say.ManHours, Say.Hours),
            typed.Needed(fields["done.totalTimeH"], "done.totalTimeH", Say.TotalTime, Say.Hours),
            typed.Date(fields["done.completedOn"], "done.completedOn", Say.CompletedOn),
            AdjusterForm.Read(fields, typed, "done.", Counted(state)),
            Surfaces: [.. Enum.GetValues<ControlSurface>().Where(surface => typed.YesNo(fields[SurfaceField(surface)], SurfaceField(surface), Words.Capital(Words.Of(surface))))],
            TotalTimeAgainH: typed.Number(fields["done.totalTimeAgainH"], "done.totalTimeAgainH", Say.TotalTime, Say.Hours),
            Movements: Movements(fields, typed, state, facts));
    }

    /// <summary>Where it is answered whether a surface was disturbed: no default, and nobody is spared the question.</summary>
    public static string SurfaceField(ControlSurface surface) => $"done.surface{surface}";

    /// <summary>The measurements that prove the directions; null where nothing was typed.</summary>
    public static IReadOnlyList<MovementMeasured>? Movements(TypedFields fields, Typed typed, SquawkState state, Facts facts) =>
        DirectionRules.ToProve(state).Select(move => move.Control).Distinct().Select(control => MovementForm.Read(fields, typed, control, facts)).OfType<MovementMeasured>().ToList() is { Count: > 0 } measured
            ? measured
            : null;

    static List<PartUsed> Parts(TypedFields fields, Typed typed)
    {
        List<PartUsed> parts = [];
        for (var i = 0; i < Rows(fields, "done.part", "quantity", "description", "number") - 1; i++)
        {
            string Field(string column) => $"done.part{i}.{column}";
            if (fields.Text(Field("description")) is null) typed.Wrong("text-missing", Gaps.Fill(Say.PartWriteWhatItIsOrClear, i + 1), Field("description"));
            if (fields.Text(Field("number")) is null) typed.Wrong("text-missing", Gaps.Fill(Say.PartWriteItsPartNumber, i + 1), Field("number"));
            var quantity = typed.Whole(fields[Field("quantity")], Field("quantity"), Gaps.Fill(Say.PartQuantity, i + 1));
            if (fields.Text(Field("quantity")) is not null && quantity < 1) typed.Wrong("value-out-of-range", Gaps.Fill(Say.PartPiecesCannotBeWanted, i + 1, fields[Field("quantity")]), Field("quantity"));
            parts.Add(new(fields.Text(Field("description")) ?? "", fields.Text(Field("number")) ?? "", quantity));
        }
        return parts;
    }

    /// <summary>What was taken to the aircraft has come back from it.</summary>
    static IEnumerable<DependentReset> ToolsCounted(TypedFields fields, Typed typed)
    {
        var (taken, back) = (typed.Whole(fields["done.toolsOut"], "done.toolsOut", Say.ToolsTakenToAircraft), typed.Whole(fields["done.toolsBack"], "done.toolsBack", Say.ToolsCountedBack));
        if (!typed.Ok) return [];
        if (taken < 0 || back != taken)
        {
            typed.Wrong("tools-missing", Gaps.Fill(Say.ToolsWentToAircraftAndCame, taken, back), "done.toolsBack");
            return [];
        }
        // What the move asks to be checked again must be on record by itself: a count of tools does not stand for it.
        return Rows(fields, "done.reset", "what", "result") > 1 ? [new("tools", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{taken} taken to the aircraft, {back} counted back"))] : [];
    }

    static List<DependentReset> Resets(TypedFields fields, Typed typed)
    {
        List<DependentReset> resets = [];
        for (var i = 0; i < Rows(fields, "done.reset", "what", "result") - 1; i++)
        {
            var (what, result) = (fields.Text($"done.reset{i}.what"), fields.Text($"done.reset{i}.result"));
            if (what is null) typed.Wrong("text-missing", Gaps.Fill(Say.CheckedAgainWriteWhatWas, i + 1), $"done.reset{i}.what");
            if (result is null) typed.Wrong("text-missing", Gaps.Fill(Say.CheckedAgainWriteWhat, i + 1), $"done.reset{i}.result");
            resets.Add(new(what ?? "", result ?? ""));
        }
        return resets;
    }

    /// <summary>Where the work is: the first part that is not done.</summary>
    /// <param name="proved">The direction of every move is proved.</param>
    public static Part Now(SquawkState state, TypedFields fields, bool proved) =>
        state.WorkStarted is null || state.Stage == Stage.CorrectionAgreed ? Part.Start
        : !FoundIsComplete(state) ? Part.Found
        : !(fields.Ticked("move.done") && proved) && state.Torques.Count == 0 ? Part.Move
        : state.Torques.Count < Loosened(state).Count || (state.WorkDone is not null && !state.TorqueSinceSigned && fields["torque.skip"] is null) ? Part.Torque
        : Part.Done;

    public static string TitleOf(Part part, SquawkState state) => part switch
    {
        Part.Start => state.Plans(Controls.MovesIncidence) ? Say.SupportWingAndStart : Say.StartWork,
        Part.Found => Texts.AsFound,
        Part.Move => Say.MakeAgreedMove,
        Part.Torque => Say.Torque,
        _ => Say.SignWork,
    };

    /// <summary>The controls whose bolts are loosened by what was agreed.</summary>
    public static IReadOnlyList<Control> Loosened(SquawkState state) => [.. (state.Correction?.Moves ?? []).Select(move => move.Control).Where(control => control.MovesIncidence()).Distinct()];

    /// <summary>What the correction moves that stands at a number and is no eccentric.</summary>
    public static IEnumerable<Control> Counted(SquawkState state) => (state.Correction?.Moves ?? []).Select(move => move.Control).Where(control => control.StandsAtANumber()).Distinct();

    /// <summary>The plan moves it by a number, so that it must be counted or measured.</summary>
    public static bool InNumbers(SquawkState state, Control control) => state.Correction?.Moves.Any(move => move.Control == control && move.Numbers().To is not null) == true;

    static bool FoundIsComplete(SquawkState state) => state.AsFound is { } found
        && (state.Correction?.Moves ?? []).Where(move => move.Control.IsEccentric()).All(move => found.Bushings.Of(move.Control) is ({ }, { }))
        && !(state.MovesInWords && string.IsNullOrWhiteSpace(found.Other))
        && Counted(state).All(control => !InNumbers(state, control) || found.Adjusters.Of(control) is not null);
}

/// <summary>The parts of the work, in order.</summary>
public enum Part { Start, Found, Move, Torque, Done }
