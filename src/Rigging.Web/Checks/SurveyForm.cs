using Rigging.Squawks.Entries;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Checks;

/// <summary>The readings of a level as typed: the fuselage datum (station 0) with each wing, and up to three stations.</summary>
static class SurveyForm
{
    /// <summary>One place of one wing, with its two fields.</summary>
    public sealed record Place(int Station, Side Wing, string Name, string Laid, string Reversed);

    public static IReadOnlyList<int> Stations { get; } = [0, 1, 2, 3];

    public static string Out(int station) => $"station{station}Out";

    public static IReadOnlyList<Place> PlacesAt(int station) =>
    [
        Of(station, Side.Left, station == 0 ? Say.DatumWithLeftWing : Say.LeftWingPlace),
        Of(station, Side.Right, station == 0 ? Say.DatumWithRightWing : Say.RightWingPlace),
    ];

    public static bool IsUsed(TypedFields fields) => Stations.SelectMany(PlacesAt).Any(place => fields.Text(place.Laid) is not null || fields.Text(place.Reversed) is not null);

    /// <summary>Null where no reading was typed.</summary>
    public static LevelSurvey? Read(TypedFields fields, Typed typed)
    {
        if (!IsUsed(fields)) return null;
        var (step, seating) = (typed.Needed(fields["stepDeg"], "stepDeg", Say.LevelStep, Say.Degrees), typed.Needed(fields["seatingDeg"], "seatingDeg", Say.TemplateSeating, Say.Degrees));
        return new(step, seating, [.. Stations.SelectMany(station => At(station, fields, typed))]);
    }

    static IEnumerable<LevelReading> At(int station, TypedFields fields, Typed typed)
    {
        double? away = station == 0 ? null : typed.Number(fields[Out(station)], Out(station), Gaps.Fill(Say.StationOutInText, station), Say.Metres);
        foreach (var place in PlacesAt(station))
        {
            var (laid, reversed) = (typed.Number(fields[place.Laid], place.Laid, place.Name, Say.Degrees), typed.Number(fields[place.Reversed], place.Reversed, place.Name, Say.Degrees));
            if (laid is null && reversed is null) continue;
            if (laid is not { } first || reversed is not { } second)
                typed.Wrong("read-once", Gaps.Fill(Say.PlaceReadOnce, station == 0 ? place.Name : $"{Gaps.Fill(Say.SurveyStation, station)}, {place.Name}"), laid is null ? place.Laid : place.Reversed);
            else if (station > 0 && away is null)
                typed.Wrong("value-missing", Gaps.Fill(Say.StationWithoutPlace, station), Out(station));
            else
                yield return new(place.Wing, away, first, second);
        }
    }

    static Place Of(int station, Side wing, string name) => new(station, wing, name, $"station{station}{wing}Laid", $"station{station}{wing}Reversed");
}
