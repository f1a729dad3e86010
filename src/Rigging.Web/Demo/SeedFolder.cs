using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.RuleSets;
using Rigging.Storage;

namespace Rigging.Web.Demo;

/// <summary>An invented school as files: who, what, and the stories of its squawks. Read strictly; what does not fit is named with its file.</summary>
public sealed record SeedFolder(
    string Folder,
    SchoolSeed School,
    IReadOnlyList<PersonSeed> People,
    IReadOnlyList<ToolSeed> Tools,
    IReadOnlyList<AircraftSeed> Fleet,
    IReadOnlyDictionary<string, string> Airframes,
    IReadOnlyList<(string File, StorySeed Story)> Stories)
{
    static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    /// <summary>The invented school that comes with the program.</summary>
    public static string Shipped { get; } = Path.Combine(AppContext.BaseDirectory, "seed-data");

    /// <exception cref="StartRefusedException">A file is missing or does not hold what it should.</exception>
    public static SeedFolder Read(string folder)
    {
        if (!Directory.Exists(folder)) throw new StartRefusedException($"There is no folder '{folder}' with an invented school; wanted: a folder like seed-data.");
        var seeds = new SeedFolder(
            folder,
            File<SchoolSeed>(folder, "school.json"),
            File<PersonSeed[]>(folder, "people.json"),
            File<ToolSeed[]>(folder, "tools.json"),
            File<AircraftSeed[]>(folder, "fleet.json"),
            Files(folder, "airframes").ToDictionary(file => Path.GetFileNameWithoutExtension(file), file => Airframe(folder, file)),
            [.. Files(folder, "squawks").Select(file => (file, File<StorySeed>(folder, file)))]);
        if (seeds.Faults().ToList() is { Count: > 0 } faults) throw new StartRefusedException(string.Join('\n', faults));
        return seeds;
    }

    public PersonSeed? Person(string key) => People.FirstOrDefault(person => person.Key == key);

    public AircraftSeed? Aircraft(string registration) => Fleet.FirstOrDefault(aircraft => aircraft.Registration == registration);

    static IEnumerable<string> Files(string folder, string below) =>
        Directory.Exists(Path.Combine(folder, below))
            ? Directory.EnumerateFiles(Path.Combine(folder, below), "*.json").Order(StringComparer.Ordinal).Select(file => $"{below}/{Path.GetFileName(file)}")
            : throw new StartRefusedException($"There is no folder '{Path.Combine(folder, below)}'.");

    static T File<T>(string folder, string file)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(System.IO.File.ReadAllText(Path.Combine(folder, file)), Form)
                ?? throw new StartRefusedException($"{file} is empty.");
        }
        catch (Exception wrong) when (wrong is JsonException or IOException)
        {
            throw new StartRefusedException($"{file}: {wrong.Message}");
        }
    }

    static string Airframe(string folder, string file)
    {
        var json = System.IO.File.ReadAllText(Path.Combine(folder, file));
        var read = ContractReader.ReadAirframe(json);
        var faults = read.Faults.Select(fault => fault.ToString()).ToList();
        if (read.Value is { } airframe && airframe.Id != Path.GetFileNameWithoutExtension(file)) faults.Add($"$.id: wanted the file's own name, seen {airframe.Id}");
        return faults.Count == 0 ? json : throw new StartRefusedException($"{file}: {string.Join("; ", faults)}");
    }

    IEnumerable<string> Faults()
    {
        if (!RuleSet.Shipped.TryGetValue(School.RuleSet, out var rules)) yield return $"school.json: no rule set '{School.RuleSet}'; wanted one of {string.Join(", ", RuleSet.Shipped.Keys)}.";
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(School.TimeZone) is null) yield return $"school.json: no time zone '{School.TimeZone}'; wanted an IANA name such as America/Chicago.";
        foreach (var person in People)
            foreach (var certificate in person.Certificates.Where(certificate => rules?.CertificateKinds.All(kind => kind.Code != certificate.Kind) == true))
                yield return $"people.json, {person.Key}: no certificate kind '{certificate.Kind}'; wanted one of {string.Join(", ", rules!.CertificateKinds.Select(kind => kind.Code))}.";
        foreach (var aircraft in Fleet)
        {
            if (!aircraft.Registration.StartsWith('Q')) yield return $"fleet.json: registration '{aircraft.Registration}' could be real; an invented one begins with Q.";
            if (!Airframes.ContainsKey(aircraft.Airframe)) yield return $"fleet.json, {aircraft.Registration}: no airframe '{aircraft.Airframe}' among {string.Join(", ", Airframes.Keys)}.";
            if (aircraft.RiggedFor is { } load && Person(load.ChosenBy) is null) yield return $"fleet.json, {aircraft.Registration}: nobody is called '{load.ChosenBy}'.";
        }
        foreach (var (file, story) in Stories)
        {
            if (Aircraft(story.Aircraft) is null) yield return $"{file}: no aircraft '{story.Aircraft}' in fleet.json.";
            foreach (var act in story.Acts.Where(act => Person(act.Who) is null)) yield return $"{file}: nobody is called '{act.Who}' in people.json.";
        }
    }
}

public sealed record SchoolSeed(string Name, string TimeZone, string RuleSet);

/// <param name="Key">How stories name the person.</param>
public sealed record PersonSeed(string Key, Guid Id, string Name, string Email, IReadOnlyList<Authority> Authorities, IReadOnlyList<CertificateSeed> Certificates);

/// <param name="ValidForDays">Counted from the day of loading; null when it does not expire.</param>
/// <param name="RecentForDays">Recent experience is stated up to so many days after the day of loading; null when none is stated.</param>
public sealed record CertificateSeed(Guid Id, string Kind, string Number, int? ValidForDays = null, int? RecentForDays = null, string? RecentBecause = null);

/// <param name="CalibrationDueInDays">Counted from the day of loading; −1 was yesterday.</param>
public sealed record ToolSeed(
    Guid Id, string Code, string Kind, string Description, string? Serial = null,
    double? RangeMin = null, double? FullScale = null, string? RangeUnit = null, double? LeverLengthIn = null,
    int? CalibratedDaysAgo = null, int? CalibrationDueInDays = null, double? Resolution = null);

/// <param name="TotalTimeH">On the day of loading, after everything in the stories.</param>
public sealed record AircraftSeed(Guid Id, string Registration, string Serial, string Airframe, double TotalTimeH, RiggedForSeed? RiggedFor = null);

/// <param name="Load">Seats and fuel in the form of an airframe's reference load.</param>
public sealed record RiggedForSeed(JsonObject Load, string ChosenBy, string Reason);

/// <summary>One squawk from its report on: what really was behind it, who did what when, and where it stands at the end.</summary>
public sealed record StorySeed(Guid Id, string Title, string Aircraft, Stage EndsAt, BehindIt BehindIt, IReadOnlyList<ActSeed> Acts);

/// <summary>The truth that nobody in the story knows: the readings were made from it.</summary>
/// <param name="After">After the work; null when nothing was moved.</param>
public sealed record BehindIt(TrueCauses Before, TrueCauses? After = null);

/// <summary>In the units and signs of the assessment's causes.</summary>
public sealed record TrueCauses(
    double PanelIncidenceDifferenceDeg = 0, double TipIncidenceDifferenceDeg = 0, double FlapDifferenceDeg = 0, double AileronFloatDeg = 0, double RudderOrFinOffsetDeg = 0);

/// <param name="DaysAgo">Counted from the day of loading, in the school's calendar.</param>
/// <param name="At">Time of day at the school.</param>
/// <param name="Kind">Of the entry, such as <c>ground-check</c>.</param>
/// <param name="Fact">What the entry says; null where the mechanics say it.</param>
/// <param name="ComesTo">For an assessment: the controls it proposes to move, or the codes of its refusals.</param>
public sealed record ActSeed(string Who, int DaysAgo, string At, string Kind, JsonObject? Fact = null, IReadOnlyList<string>? ComesTo = null);
