using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Fastening;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Web.Desk;
using UnitsNet;
using Lubrication = Rigging.Mechanics.Contract.Lubrication;
using Refusal = Rigging.Mechanics.Contract.Refusal;
using TurnedPart = Rigging.Mechanics.Contract.TurnedPart;

namespace Rigging.Web.Work;

/// <summary>A torque application as typed, and what follows from it so far: each stage is computed as soon as what it needs is entered.</summary>
/// <param name="Target">What the data want, before any run-on.</param>
/// <param name="Final">What the fastener is brought to.</param>
/// <param name="Setting">What the wrench may show.</param>
/// <param name="Reached">What the fastener felt when the wrench showed what was typed.</param>
/// <param name="Above">That it was pulled beyond its limits: it happened, and is recorded with what was done about it. Null when it was not.</param>
/// <param name="Refusals">What is wrong with what is entered; nothing about what is still open.</param>
sealed record TorqueForm(TorqueTarget? Target, FinalTorque? Final, WrenchSetting? Setting, Torque? Reached, Refusal? Above, IReadOnlyList<Refusal> Refusals)
{
    public const string SelfLocking = "self-locking", CastleOrPlain = "castle";

    public const string OnFile = "file", Manual = "manual", Table = "table";

    public static TorqueForm Of(TypedFields fields, SquawkFile file)
    {
        List<Refusal> wrong = [];
        T? Take<T>(Mechanics.Answer<T>? answer) where T : class
        {
            wrong.AddRange(answer?.Refusals ?? []);
            return answer?.Value;
        }

        var target = Take(TargetOf(fields, file));
        var final = target is null ? null : Take(FinalOf(fields, target));
        var extension = ExtensionOf(fields);
        var wrench = WrenchOf(fields, file);
        var day = Day(LateEntry.Day(fields, file.Facts.Today, "torque."));
        WrenchSetting? setting = null;
        if (wrench is not null && final is not null && extension is not null) setting = Take(wrench.Set(final, extension, day));
        else if (wrench is not null) wrong.AddRange(wrench.CalibrationOn(day));
        var reached = wrench is not null && extension is not null && Number(fields, "settingInLb") is { } shown ? wrench.AtFastener(InLb(shown), extension) : null;
        var judged = final is not null && reached is { } felt ? final.Judge(felt) : [];
        var above = judged.FirstOrDefault(refusal => refusal.Code == "torque-above-target");
        wrong.AddRange(judged.Where(refusal => refusal != above));
        return new(target, final, setting, reached, above, wrong);
    }

    /// <summary>A self-locking nut for which no run-on was measured, or none felt.</summary>
    public static bool AsksAboutRunOn(TypedFields fields) => fields["torque.nut"] == SelfLocking && Number(fields, "runOnInLb") is not > 0;

    /// <summary>The figure is for the one part and the other is turned.</summary>
    public bool AsksAboutTurned(TypedFields fields) => Target is { } target && Part(fields["torque.turned"]) is { } turned && turned != target.Turned;

    /// <summary>Null when something is missing or wrong: then <paramref name="typed"/> says what.</summary>
    public static TorqueApplied? Read(TypedFields fields, Typed typed, SquawkFile file)
    {
        var form = Of(fields, file);
        foreach (var refusal in form.Refusals) typed.Wrong(refusal.Code, refusal.Sentence, FieldOf(refusal.Code));
        void Need(bool given, string field, string sentence)
        {
            if (!given) typed.Wrong("value-missing", sentence, field);
        }
        Need(fields.Text("torque.fastener") is not null, "torque.fastener", Say.FastenerNothingEnteredWanted);
        Need(fields["torque.source"] is not null, "torque.source", Say.TorquesSourceNothingChosen);
        Need(fields["torque.threads"] is not null, "torque.threads", Say.ThreadsNothingChosenSay);
        Need(fields["torque.nut"] is SelfLocking or CastleOrPlain, "torque.nut", Say.NutNothingChosen);
        Need(fields["torque.turned"] is not null, "torque.turned", Say.WhatIsTurnedNothingChosen);
        Need(form.Target is null || form.Target.IncludesPrevailing || fields.Text("torque.runOnInLb") is not null, "torque.runOnInLb", Say.RunOnNothingEnteredWanted);
        Need(WrenchId(fields, file) is not null, "torque.wrench", Say.WrenchNothingChosenChoose);
        var (runOn, lever, extension, angle) = (typed.Number(fields["torque.runOnInLb"], "torque.runOnInLb", Say.RunOn, "in·lb"), typed.Needed(fields["torque.leverIn"] ?? LeverOnFile(fields, file), "torque.leverIn", Say.Lever, Say.Inches),
            typed.Number(fields["torque.extension"], "torque.extension", Say.Extension, Say.Inches) ?? 0, typed.Number(fields["torque.angle"], "torque.angle", Say.AngleOfExtension, Say.Degrees) ?? 0);
        var happened = LateEntry.Read(fields, typed, file.School.Zone, "torque.");
        var setting = typed.Needed(fields["torque.settingInLb"], "torque.settingInLb", Say.WrenchShowed, "in·lb");
        if (typed.Ok && form.Target is null) typed.Wrong("value-missing", Say.TorqueWantedSayWhat, "torque.source");
        if (!typed.Ok || form is not { Target: { } target, Final: { } final, Reached: { } reached }) return null;
        double least = target.Least.PoundForceInches, greatest = target.Greatest.PoundForceInches, finalLeast = final.Least.PoundForceInches, finalGreatest = final.Greatest.PoundForceInches, felt = reached.PoundForceInches;
        return new(fields.Text("torque.fastener")!, target.Source, Round(least), Round(greatest), target.IncludesPrevailing,
            target.Lubrication == Lubrication.Dry ? Squawks.Entries.Lubrication.Dry : Squawks.Entries.Lubrication.Lubricated,
            final.Turned == TurnedPart.Nut ? Squawks.Entries.TurnedPart.Nut : Squawks.Entries.TurnedPart.BoltHead,
            runOn, Round(finalLeast), Round(finalGreatest), WrenchId(fields, file)!.Value, null, null, lever, extension, angle, setting, Round(felt), fields.Ticked("torque.torqueStripe"), happened,
            fields["torque.nut"] == SelfLocking ? NutKind.SelfLocking : NutKind.CastleOrPlain,
            AsksAboutRunOn(fields) ? fields.Text("torque.noRunOnBecause") : null,
            target.Turned == TurnedPart.Nut ? Squawks.Entries.TurnedPart.Nut : Squawks.Entries.TurnedPart.BoltHead,
            form.AsksAboutTurned(fields) ? fields.Text("torque.otherPartBecause") : null,
            form.Above is null ? null : fields.Text("torque.outOfLimitsDone"));
    }

    public static string? LeverOnFile(TypedFields fields, SquawkFile file) =>
        WrenchId(fields, file) is { } id && file.Facts.Tools[id].LeverIn is { } lever ? lever.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture) : null;

    public static ToolId? WrenchId(TypedFields fields, SquawkFile file) =>
        Guid.TryParse(fields["torque.wrench"], out var id) && file.Facts.Tools.ContainsKey(new(id)) ? new(id) : null;

    static Mechanics.Answer<TorqueTarget>? TargetOf(TypedFields fields, SquawkFile file) => fields["torque.source"] switch
    {
        OnFile when FastenerOnFile(file) is { TorqueInLb: { } range } bolt && (bolt.IncludesPrevailing ?? YesNo(fields["torque.includes"])) is { } includes
            && (bolt.Lubrication ?? Threads(fields["torque.for"])) is { } threads && (bolt.Turned ?? Part(fields["torque.by"])) is { } part =>
            TorqueTarget.FromManual(file.Facts.Airframe!.Read().ApprovedData ?? "", InLb(range.Least), InLb(range.Greatest), includes, threads, part),
        Manual when Number(fields, "min") is { } least && Number(fields, "max") is { } greatest && fields.Text("torque.citation") is { } citation
            && YesNo(fields["torque.includes"]) is { } includes && Threads(fields["torque.for"]) is { } threads && Part(fields["torque.by"]) is { } part =>
            TorqueTarget.FromManual(citation, InLb(least), InLb(greatest), includes, threads, part),
        Table when fields.Text("torque.citation") is { } silent && fields.Text("torque.thread") is { } thread && fields["torque.load"] is "tension" or "shear" =>
            TorqueTarget.FromTable(silent, thread, fields["torque.load"] == "shear" ? NutLoad.Shear : NutLoad.Tension),
        _ => null,
    };

    static Mechanics.Answer<FinalTorque>? FinalOf(TypedFields fields, TorqueTarget target)
    {
        if (Threads(fields["torque.threads"]) is not { } threads || Part(fields["torque.turned"]) is not { } turned) return null;
        var runOn = Number(fields, "runOnInLb");
        return runOn is null && !target.IncludesPrevailing ? null : FinalTorque.For(target, threads, turned, runOn is { } measured ? new RunOn(InLb(measured), turned) : null);
    }

    static TorqueWrench? WrenchOf(TypedFields fields, SquawkFile file)
    {
        if (WrenchId(fields, file) is not { } id || file.Facts.Tools[id] is not { Kind: ToolKind.TorqueWrench, Low: { } low, High: { } high } tool) return null;
        return (Number(fields, "leverIn") ?? tool.LeverIn) is { } lever and > 0 and < 100
            ? new(tool.Code, Length.FromInches(lever), InLb(high), (InLb(low), InLb(high)), null, tool.CalibrationDue is { } due ? Day(due) : null)
            : null;
    }

    static Extension? ExtensionOf(TypedFields fields)
    {
        var (length, angle) = (fields.Text("torque.extension") is null ? 0 : Number(fields, "extension"), fields.Text("torque.angle") is null ? 0 : Number(fields, "angle"));
        return length is { } inches && angle is { } degrees ? new(Length.FromInches(inches), Angle.FromDegrees(degrees)) : null;
    }

    public static FastenerOnFile? FastenerOnFile(SquawkFile file) => file.Facts.Airframe?.Read().Eccentric?.Fastener;

    static string FieldOf(string code) => code switch
    {
        "manual-not-cited" or "manual-silence-not-cited" => "torque.citation",
        "torque-range-wrong" => "torque.min",
        "lubrication-differs" => "torque.threads",
        "turned-part-differs" => "torque.turned",
        "run-on-missing" or "run-on-out-of-range" or "run-on-of-other-part" => "torque.runOnInLb",
        "extension-wrong" => "torque.extension",
        "torque-below-target" or "torque-above-target" => "torque.settingInLb",
        "thread-not-in-table" => "torque.thread",
        _ => "torque.wrench",
    };

    // Quietly: what is no number yet is said when it is recorded.
    static double? Number(TypedFields fields, string field) => new Typed().Number(fields[$"torque.{field}"], field, field);

    static bool? YesNo(string? text) => text switch { "yes" => true, "no" => false, _ => null };

    static Lubrication? Threads(string? text) => text switch { "dry" => Lubrication.Dry, "lubricated" => Lubrication.Lubricated, _ => null };

    static TurnedPart? Part(string? text) => text switch { "nut" => TurnedPart.Nut, "head" => TurnedPart.Head, _ => null };

    static Torque InLb(double value) => Torque.FromPoundForceInches(value);

    static double Round(double value) => Math.Round(value, 2);

    static DateOnly Day(LocalDate day) => day.ToDateOnly();
}
