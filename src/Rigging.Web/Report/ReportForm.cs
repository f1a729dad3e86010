using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Report;

/// <summary>The pilot's form, as typed, and how it becomes a report. What was left empty or "not sure" stays unknown; nothing is guessed.</summary>
static class ReportForm
{
    /// <summary>The answer to the grounding questions that says there was none: without an answer nobody can tell that the question was read.</summary>
    public const string NoRedFlag = "none";

    const double KnotsPerMph = 0.868976241900648;      // by definition of the two miles
    const int LongestNote = 1000;

    /// <summary>Fuel as a part of a full tank, as a gauge shows it.</summary>
    public const string OfATank = "tank";

    /// <param name="fields">As typed.</param>
    /// <param name="fleet">By registration.</param>
    /// <param name="lately">What the page offered as work done last; null when no aircraft was known beforehand.</param>
    /// <param name="photos">Those that are kept already.</param>
    public static (Reported? Report, IReadOnlyList<BrokenRule> Errors) Read(
        TypedFields fields, IReadOnlyDictionary<string, ReportableAircraft> fleet, Lately? lately = null, IReadOnlyList<Photo>? photos = null)
    {
        var typed = new Typed();
        var aircraft = Aircraft(fields, fleet, typed);
        var (flags, dangers) = Grounding(fields, typed);
        // Without an aircraft there is nothing to ground.
        var atOnce = aircraft is not null && flags.Count + dangers.Count > 0;
        if (!atOnce && fields.Text("words") is null) typed.Wrong("text-missing", Say.SayWhatAeroplaneDoes, "words");
        var rollsTo = atOnce ? Or(fields, "rollsTo", Say.WhichWayItRolls, Side.NotRecorded, typed) : typed.Choice<Side>(fields["rollsTo"], "rollsTo", Say.WhichWayItRolls);
        var (hands, feet) = Doing(fields, typed);
        var (fuelLeft, fuelRight) = ReportAmounts.Fuel(fields, aircraft, typed);
        var (seatLeft, seatRight) = ReportAmounts.Seats(fields, typed);
        var report = new Reported(
            0, aircraft?.Id ?? default, fields["words"] ?? "", rollsTo,
            Or(fields, "strength", Say.HowBriskly, RollStrength.NotRecorded, typed),
            hands, feet,
            Speed(fields, typed),
            typed.Number(fields["pressureAltitudeFt"], "pressureAltitudeFt", Say.PressureAltitudeFtLabel, "ft"),
            typed.Number(fields["powerPercent"], "powerPercent", Say.PowerPercentLabel, "%"),
            typed.Number(fields.Text("flapOtherDeg") ?? fields["flapDeg"], fields.Text("flapOtherDeg") is null ? "flapDeg" : "flapOtherDeg", Say.Flap, "degrees"),
            Ball(fields, typed),
            Bank(fields, typed),
            typed.Number(fields["bankAfterS"], "bankAfterS", Say.TimeToThatBank, "seconds"),
            fuelLeft, fuelRight,
            Or(fields, "fuelMethod", Say.HowFuelIsKnown, FuelMethod.NotKnown, typed),
            seatLeft, seatRight,
            Chosen(fields, "since", "sinceWhen", Say.SinceWhen, Choices.Since, typed),
            Chosen(fields, "last", "lastWork", Say.WhatWasDoneLast, Choices.LastWork(lately), typed),
            StraightBefore(fields, typed),
            [.. dangers.Concat(fields.All("happened").Select(word => typed.Choice<Happening>(word, "happened", Say.WhatHappenedSince))).Distinct()],
            flags,
            string.IsNullOrEmpty(fields["aboard"]) ? null : typed.Choice<Aboard>(fields["aboard"], "aboard", Say.WhoSatWhere),
            Short(fields, "asSet", Say.TrimsAndPowerAsSet, typed),
            photos is { Count: > 0 } ? photos : null,
            fields.All("withoutEffect") is { Count: > 0 } tried ? [.. tried.Select(word => typed.Choice<Tried>(word, "withoutEffect", Say.TriedWithoutEffect)).Distinct()] : null);
        if (atOnce) return (AtOnce.Of(report, typed.Errors.Select(error => error.Sentence)), []);
        return typed.Ok ? (report, []) : (null, typed.Errors);
    }

    static ReportableAircraft? Aircraft(TypedFields fields, IReadOnlyDictionary<string, ReportableAircraft> fleet, Typed typed)
    {
        if (fields.Text("aircraft") is not { } registration)
            typed.Wrong("value-missing", Say.WhichAircraftNothingChosen, "aircraft");
        else if (fleet.TryGetValue(registration, out var aircraft))
            return aircraft;
        else
            typed.Wrong("aircraft-unknown", Gaps.Fill(Say.WhichAircraftIsNotInFleet, registration), "aircraft");
        return null;
    }

    static (Hands, Feet) Doing(TypedFields fields, Typed typed)
    {
        if (string.IsNullOrEmpty(fields["doing"])) return (Hands.NotRecorded, Feet.NotRecorded);
        if (Choices.Doings.FirstOrDefault(doing => doing.Value == fields["doing"]) is { Value: not null } known) return (known.Hands, known.Feet);
        typed.Wrong("not-a-choice", Gaps.Fill(Say.HandsAndFeetIsNotOne, fields["doing"]), "doing");
        return default;
    }

    static double? Speed(TypedFields fields, Typed typed)
    {
        var mph = fields["speedUnit"] == "mph";
        return typed.Number(fields["casKt"], "casKt", Texts.Airspeed, mph ? "mph" : "kt") is { } speed ? Math.Round(speed * (mph ? KnotsPerMph : 1), 1) : null;
    }

    static double? Ball(TypedFields fields, Typed typed)
    {
        if (string.IsNullOrEmpty(fields["ball"])) return null;
        if (Choices.Ball.Any(choice => choice.Value == fields["ball"])) return typed.Number(fields["ball"], "ball", Texts.Ball);
        typed.Wrong("not-a-choice", Gaps.Fill(Say.BallIsNotOneOfChoices, fields["ball"]), "ball");
        return null;
    }

    /// <summary>The dangers, asked first. A tick counts, whatever else was tapped.</summary>
    static (IReadOnlyList<RedFlag>, IReadOnlyList<Happening>) Grounding(TypedFields fields, Typed typed)
    {
        var answers = fields.All(Dangers.Field).Where(answer => answer.Length > 0).Distinct().ToList();
        if (answers.Count == 0) typed.Wrong("value-missing", Say.TickWhatHappenedOrNone, Dangers.Field);
        else if (answers.Contains(NoRedFlag) && answers.Count > 1) typed.Wrong("contradiction", Say.NoneOfTheseAndSomethingElse, Dangers.Field);
        return Dangers.Ticked(answers.Where(answer => answer != NoRedFlag), typed);
    }

    static T Or<T>(TypedFields fields, string field, string name, T notRecorded, Typed typed) where T : struct, Enum =>
        string.IsNullOrEmpty(fields[field]) ? notRecorded : typed.Choice<T>(fields[field], field, name);

    /// <summary>A tapped answer, and what was typed beside it.</summary>
    static string? Chosen(TypedFields fields, string field, string ownWords, string name, IReadOnlyList<Look.Choice> offered, Typed typed)
    {
        var (tapped, own) = (fields.Text(field), Short(fields, ownWords, name, typed));
        if (tapped is not null && offered.All(choice => choice.Value != tapped)) typed.Wrong("not-a-choice", Gaps.Fill(Say.IsNotOneOfChoicesChoose, name, tapped), field);
        return (tapped, own) switch
        {
            (null, _) => own,
            (_, null) => tapped,
            _ => $"{tapped}. {own}",
        };
    }

    static string? Short(TypedFields fields, string field, string name, Typed typed)
    {
        var text = fields.Text(field);
        if (text is { Length: > LongestNote }) typed.Wrong("text-too-long", Gaps.Fill(Say.CharactersAtMostFieldForYour, name, text.Length, LongestNote), field);
        return text;
    }

    static bool? StraightBefore(TypedFields fields, Typed typed)
    {
        switch (fields["straightBefore"])
        {
            case "yes": return true;
            case "no": return false;
            case null or "" or "unknown": return null;
            case var other:
                typed.Wrong("not-a-choice", Gaps.Fill(Say.StraightBeforeIsNotOne, other), "straightBefore");
                return null;
        }
    }

    /// <summary>A size without a sign and the side beside it; right is positive.</summary>
    static double? Bank(TypedFields fields, Typed typed)
    {
        const string name = "Bank";
        const double most = 90;
        var size = typed.Number(fields["bankDeg"], "bankDeg", name, "degrees");
        var side = Or(fields, "bankSide", Gaps.Fill(Say.Side, name), Side.NotRecorded, typed);
        if (size is { } value && !(value >= 0 && value <= most))
        {
            typed.Wrong("value-out-of-range", Gaps.Fill(Say.CannotBeWanted0ToAndSide, name, Words.Number(value), Words.Number(most)), "bankDeg");
            return null;
        }
        switch (side, size)
        {
            case (Side.Left or Side.Right, null):
                if (typed.Errors.All(error => error.Field != "bankDeg")) typed.Wrong("value-missing", Gaps.Fill(Say.YouChoseSideSay, name, Words.Of(side)), "bankDeg");
                return null;
            case (Side.NotRecorded, > 0):
                typed.Wrong("value-missing", Gaps.Fill(Say.ToWhichSideChooseLeft, name, Words.Number(size.Value)), "bankSide");
                return null;
            default: return side == Side.Left ? -size : size;
        }
    }
}
