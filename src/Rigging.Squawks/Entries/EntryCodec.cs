using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Entries;

/// <summary>Entry to the exact bytes that are stored and hashed, and back.</summary>
/// <remarks>
/// Writing happens once, before hashing; verification reads the stored bytes and never writes them again.
/// A kind/version pair is frozen once released. A new shape gets a new version and, on read, an upcaster from the old one.
/// </remarks>
public static class EntryCodec
{
    static readonly JsonSerializerOptions Options = CreateOptions();

    static readonly Dictionary<string, (int Version, Type Type)> ByKind = new()
    {
        ["report"] = (4, typeof(Reported)),
        ["airworthiness-call"] = (2, typeof(Called)),
        ["ground-check"] = (3, typeof(GroundChecked)),
        ["evaluation-flight"] = (2, typeof(EvaluationFlown)),
        ["assessment"] = (1, typeof(Assessed)),
        ["correction"] = (2, typeof(CorrectionAgreed)),
        ["correction-withdrawn"] = (1, typeof(CorrectionWithdrawn)),
        ["work-started"] = (2, typeof(WorkStarted)),
        ["as-found"] = (3, typeof(AsFound)),
        ["torque-application"] = (3, typeof(TorqueApplied)),
        ["torque-recheck"] = (1, typeof(TorqueRechecked)),
        ["photograph"] = (2, typeof(Photographed)),
        ["work-handover"] = (2, typeof(WorkHandedOver)),
        ["work-done"] = (4, typeof(WorkDone)),
        ["independent-inspection"] = (1, typeof(Inspected)),
        ["approval"] = (1, typeof(Approved)),
        ["check-flight"] = (2, typeof(CheckFlown)),
        ["verdict"] = (2, typeof(VerdictGiven)),
        ["closing"] = (1, typeof(Closed)),
        ["round-opened"] = (1, typeof(RoundOpened)),
        ["waiting"] = (1, typeof(Waiting)),
        ["resumed"] = (1, typeof(Resumed)),
        ["note"] = (3, typeof(Noted)),
        ["total-time-correction"] = (1, typeof(TotalTimeCorrected)),
        ["no-fault-found"] = (1, typeof(NoFaultFound)),
        ["within-limits"] = (1, typeof(WithinLimits)),
        ["joined"] = (1, typeof(JoinedTo)),
        ["handed-over"] = (1, typeof(HandedOver)),
    };

    /// <summary>Earlier versions that need no other upcaster than "not recorded": the later one only added what may be null.</summary>
    static readonly HashSet<(string Kind, int Version)> OnlyLacking =
    [
        ("report", 1), ("report", 2), ("report", 3), ("airworthiness-call", 1), ("verdict", 1), ("photograph", 1), ("ground-check", 1), ("ground-check", 2), ("evaluation-flight", 1), ("correction", 1),
        ("work-started", 1), ("as-found", 1), ("as-found", 2), ("torque-application", 1), ("torque-application", 2), ("work-handover", 1),
        ("work-done", 1), ("work-done", 2), ("work-done", 3),
        ("check-flight", 1),
        ("note", 1), ("note", 2),
    ];

    static readonly Dictionary<Type, string> KindByType = ByKind.ToDictionary(pair => pair.Value.Type, pair => pair.Key);

    /// <summary>Every kind this program writes.</summary>
    public static IReadOnlyCollection<string> Kinds => ByKind.Keys;

    public static string KindOf(Fact fact) => fact is NewerEntry newer ? newer.Kind : KindByType[fact.GetType()];

    public static string KindOf<T>() where T : Fact => KindByType[typeof(T)];

    public static Type TypeOf(string kind) => ByKind[kind].Type;

    public static int VersionOf(Fact fact) => fact is NewerEntry newer ? newer.Version : ByKind[KindOf(fact)].Version;

    /// <summary>The bytes to hash and store. Property order is declaration order; NaN and infinities are refused, −0 becomes 0.</summary>
    public static string Write(Entry entry)
    {
        if (entry.Fact is NewerEntry) throw new ArgumentException("An entry of an unknown kind can be read, never written.", nameof(entry));
        var fact = JsonSerializer.SerializeToElement(entry.Fact, entry.Fact.GetType(), Options);
        return JsonSerializer.Serialize(new Envelope(entry.At, entry.By.Value, entry.As, fact, entry.Signature), Options);
    }

    /// <summary>Never throws on a kind or version that is unknown: that becomes a <see cref="NewerEntry"/>.</summary>
    public static Entry Read(int sequence, string kind, int version, string payload)
    {
        var envelope = JsonSerializer.Deserialize<Envelope>(payload, Options)
            ?? throw new JsonException($"Entry {sequence} is empty.");
        Fact fact = ByKind.TryGetValue(kind, out var known) && (known.Version == version || OnlyLacking.Contains((kind, version)))
            ? (Fact)envelope.Fact.Deserialize(known.Type, Options)!
            : new NewerEntry(kind, version, payload);
        return new Entry(sequence, envelope.At, new PersonId(envelope.By), envelope.As, fact, envelope.Signature);
    }

    /// <summary>A draft of a fact as JSON and back, with the same rules as stored entries.</summary>
    public static string WriteFact(Fact fact) => JsonSerializer.Serialize(fact, fact.GetType(), Options);

    /// <exception cref="JsonException">The text is not a fact of that kind.</exception>
    public static Fact ReadFact(string kind, string json)
    {
        using var draft = JsonDocument.Parse(json);
        if (HoldsNothing(draft.RootElement)) throw new JsonException($"A list of this {kind} has a place with nothing in it.");
        return (Fact)draft.Deserialize(ByKind[kind].Type, Options)!;
    }

    /// <summary>Whether a list in it has a place with nothing: the types say that none is empty, the reader of JSON does not ask.</summary>
    public static bool HoldsNothing(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Array => element.EnumerateArray().Any(item => item.ValueKind == JsonValueKind.Null || HoldsNothing(item)),
        JsonValueKind.Object => element.EnumerateObject().Any(property => HoldsNothing(property.Value)),
        _ => false,
    };

    sealed record Envelope(Instant At, Guid By, Authority As, JsonElement Fact, Signature? Signature);

    static JsonSerializerOptions CreateOptions()
    {
        var options = new JsonSerializerOptions
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectNullableAnnotations = true,
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { NothingLeftOut } },
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        options.Converters.Add(new PlainDouble());
        options.Converters.Add(new IdConverter<PersonId>(id => id.Value, value => new(value)));
        options.Converters.Add(new IdConverter<AircraftId>(id => id.Value, value => new(value)));
        options.Converters.Add(new IdConverter<SquawkId>(id => id.Value, value => new(value)));
        options.Converters.Add(new IdConverter<ToolId>(id => id.Value, value => new(value)));
        options.Converters.Add(new IdConverter<CertificateId>(id => id.Value, value => new(value)));
        options.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
        return options;
    }

    // A null is left out when written, so only what can be null may be missing when read: no value is ever made up.
    static void NothingLeftOut(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
            property.IsRequired = property.AssociatedParameter is { IsNullable: false };
    }

    sealed class PlainDouble : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (!double.IsFinite(value)) throw new JsonException($"{value} is not a number a record can hold.");
            writer.WriteNumberValue(value == 0 ? 0 : value);   // −0 compares equal to 0 and becomes it
        }
    }

    sealed class IdConverter<T>(Func<T, Guid> value, Func<Guid, T> make) : JsonConverter<T>
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => make(reader.GetGuid());

        public override void Write(Utf8JsonWriter writer, T id, JsonSerializerOptions options) => writer.WriteStringValue(value(id));
    }
}
