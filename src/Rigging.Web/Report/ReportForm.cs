using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

/// <summary>The pilot's form, as typed, and how it becomes a report. What was left empty or "not sure" stays unknown; nothing is guessed.</summary>
static class ReportForm
{
    /// <summary>The red-flag answer that says there was none: without an answer nobody can tell that the question was read.</summary>
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
        if (fields.Text("words") is null) typed.Wrong("text-missing", "Say what the aeroplane does, in your own words.", "words");
        var rollsTo = typed.Choice<Side>(fields["rollsTo"], "rollsTo", "Which way it rolls");
        var (hands, feet) = Doing(fields, typed);
        var (fuelLeft, fuelRight) = ReportAmounts.Fuel(fields, aircraft, typed);
        var (seatLeft, seatRight) = ReportAmounts.Seats(fields, typed);
        var report = new Reported(
            0, aircraft?.Id ?? default, fields["words"] ?? "", rollsTo,
            Or(fields, "strength", "How briskly", RollStrength.NotRecorded, typed),
            hands, feet,
            Speed(fields, typed),
            typed.Number(fields["pressureAltitudeFt"], "pressureAltitudeFt", "Altitude", "ft"),
            typed.Number(fields["powerPercent"], "powerPercent", "Power", "%"),
            typed.Number(fields.Text("flapOtherDeg") ?? fields["flapDeg"], fields.Text("flapOtherDeg") is null ? "flapDeg" : "flapOtherDeg", "Flap", "degrees"),
            Ball(fields, typed),
            Bank(fields, typed),
            typed.Number(fields["bankAfterS"], "bankAfterS", "Time to that bank", "seconds"),
            fuelLeft, fuelRight,
            Or(fields, "fuelMethod", "How the fuel is known", FuelMethod.NotKnown, typed),
            seatLeft, seatRight,
            Chosen(fields, "since", "sinceWhen", "Since when", Choices.Since, typed),
            Chosen(fields, "last", "lastWork", "What was done last", Choices.LastWork(lately), typed),
            StraightBefore(fields, typed),
            [.. fields.All("happened").Select(word => typed.Choice<Happening>(word, "happened", "What happened since")).Distinct()],
            RedFlags(fields, typed),
            string.IsNullOrEmpty(fields["aboard"]) ? null : typed.Choice<Aboard>(fields["aboard"], "aboard", "Who sat where"),
            Short(fields, "asSet", "Trims and power as set", typed),
            photos is { Count: > 0 } ? photos : null);
        return typed.Ok ? (report, []) : (null, typed.Errors);
    }

    static ReportableAircraft? Aircraft(TypedFields fields, IReadOnlyDictionary<string, ReportableAircraft> fleet, Typed typed)
    {
        if (fields.Text("aircraft") is not { } registration)
            typed.Wrong("value-missing", "Which aircraft: nothing chosen. Choose one of the fleet.", "aircraft");
        else if (fleet.TryGetValue(registration, out var aircraft))
            return aircraft;
        else
            typed.Wrong("aircraft-unknown", $"Which aircraft: “{registration}” is not in the fleet. Choose one that is.", "aircraft");
        return null;
    }

    static (Hands, Feet) Doing(TypedFields fields, Typed typed)
    {
        if (string.IsNullOrEmpty(fields["doing"])) return (Hands.NotRecorded, Feet.NotRecorded);
        if (Choices.Doings.FirstOrDefault(doing => doing.Value == fields["doing"]) is { Value: not null } known) return (known.Hands, known.Feet);
        typed.Wrong("not-a-choice", $"Hands and feet: “{fields["doing"]}” is not one of the choices. Choose one.", "doing");
        return default;
    }

    static double? Speed(TypedFields fields, Typed typed)
    {
        var mph = fields["speedUnit"] == "mph";
        return typed.Number(fields["casKt"], "casKt", "Airspeed", mph ? "mph" : "kt") is { } speed ? Math.Round(speed * (mph ? KnotsPerMph : 1), 1) : null;
    }

    static double? Ball(TypedFields fields, Typed typed)
    {
        if (string.IsNullOrEmpty(fields["ball"])) return null;
        if (Choices.Ball.Any(choice => choice.Value == fields["ball"])) return typed.Number(fields["ball"], "ball", "Ball");
        typed.Wrong("not-a-choice", $"Ball: “{fields["ball"]}” is not one of the choices. Choose one.", "ball");
        return null;
    }

    static IReadOnlyList<RedFlag> RedFlags(TypedFields fields, Typed typed)
    {
        var answers = fields.All("redFlags").Where(answer => answer.Length > 0).ToList();
        if (answers.Count == 0)
            typed.Wrong("value-missing", "Tick what happened, or “none of these”: each of these grounds the aircraft at once.", "redFlags");
        else if (answers.Contains(NoRedFlag) && answers.Count > 1)
            typed.Wrong("contradiction", "“None of these” and something else are both ticked. Leave ticked what is true.", "redFlags");
        return [.. answers.Where(answer => answer != NoRedFlag).Select(answer => typed.Choice<RedFlag>(answer, "redFlags", "Red flags")).Distinct()];
    }

    static T Or<T>(TypedFields fields, string field, string name, T notRecorded, Typed typed) where T : struct, Enum =>
        string.IsNullOrEmpty(fields[field]) ? notRecorded : typed.Choice<T>(fields[field], field, name);

    /// <summary>A tapped answer, and what was typed beside it.</summary>
    static string? Chosen(TypedFields fields, string field, string ownWords, string name, IReadOnlyList<Look.Choice> offered, Typed typed)
    {
        var (tapped, own) = (fields.Text(field), Short(fields, ownWords, name, typed));
        if (tapped is not null && offered.All(choice => choice.Value != tapped)) typed.Wrong("not-a-choice", $"{name}: “{tapped}” is not one of the choices. Choose one.", field);
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
        if (text is { Length: > LongestNote }) typed.Wrong("text-too-long", $"{name}: {text.Length} characters; at most {LongestNote}. The field for your own words takes more.", field);
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
                typed.Wrong("not-a-choice", $"Straight before: “{other}” is not one of the choices.", "straightBefore");
                return null;
        }
    }

    /// <summary>A size without a sign and the side beside it; right is positive.</summary>
    static double? Bank(TypedFields fields, Typed typed)
    {
        const string name = "Bank";
        const double most = 90;
        var size = typed.Number(fields["bankDeg"], "bankDeg", name, "degrees");
        var side = Or(fields, "bankSide", $"{name}, side", Side.NotRecorded, typed);
        if (size is { } value && !(value >= 0 && value <= most))
        {
            typed.Wrong("value-out-of-range", $"{name} {Words.Number(value)}° cannot be: wanted 0 to {Words.Number(most)}°, and the side beside it.", "bankDeg");
            return null;
        }
        switch (side, size)
        {
            case (Side.Left or Side.Right, null):
                if (typed.Errors.All(error => error.Field != "bankDeg")) typed.Wrong("value-missing", $"{name}: you chose the {Words.Of(side)} side. Say how much, in degrees, or choose “not timed”.", "bankDeg");
                return null;
            case (Side.NotRecorded, > 0):
                typed.Wrong("value-missing", $"{name} {Words.Number(size.Value)}°: to which side? Choose left or right.", "bankSide");
                return null;
            default: return side == Side.Left ? -size : size;
        }
    }
}
