using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace Rigging.Mechanics.Contract;

/// <summary>Writes the contract's forms; what <see cref="ContractReader"/> reads back is the same.</summary>
public static class ContractWriter
{
    static readonly JsonSerializerOptions Whole = new()
    {
        PropertyNamingPolicy = new FirstLetterLower(),
        WriteIndented = true,
        IndentSize = 2,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
        Converters =
        {
            new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false),
            new AsItsKind<Reading>(), new AsItsKind<GroundCheck>(), new TorquePair(), new BushingsForm(), new EventWord(),
        },
    };

    // The reader takes an absent field for null, and a file without them is easier to read.
    static readonly JsonSerializerOptions WithoutNulls = new(Whole) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    /// <summary>Every field is written, null where there is nothing.</summary>
    public static string Write(AssessmentResponse response) => JsonSerializer.Serialize(response, Whole);

    public static string Write(AssessmentRequest request) => JsonSerializer.Serialize(request, WithoutNulls);

    public static string Write(Airframe airframe) => JsonSerializer.Serialize(airframe, WithoutNulls);

    /// <summary>An answer that <see cref="Write(AssessmentResponse)"/> wrote earlier; null when the text is no such answer.</summary>
    public static AssessmentResponse? ReadBack(string response)
    {
        try
        {
            return JsonSerializer.Deserialize<AssessmentResponse>(response, Whole);
        }
        catch (Exception unreadable) when (unreadable is JsonException or ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary><c>CYBeta</c> is <c>cYBeta</c> here; the library's camel case would make it <c>cyBeta</c>.</summary>
    sealed class FirstLetterLower : JsonNamingPolicy
    {
        public override string ConvertName(string name) => char.ToLowerInvariant(name[0]) + name[1..];
    }

    /// <summary>Writes the fields of the kind it is, not of the family.</summary>
    sealed class AsItsKind<T> : JsonConverter<T> where T : class
    {
        public override bool CanConvert(Type typeToConvert) => typeToConvert == typeof(T);

        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException("Requests are read by ContractReader.");

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, value, value.GetType(), options);
    }

    sealed class BushingsForm : JsonConverter<BushingAngles>
    {
        public override BushingAngles Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException("Requests are read by ContractReader.");

        public override void Write(Utf8JsonWriter writer, BushingAngles value, JsonSerializerOptions options)
        {
            if (value.Front.Equals(value.Rear))
            {
                writer.WriteNumberValue(value.Front);
                return;
            }
            writer.WriteStartObject();
            writer.WriteNumber("front", value.Front);
            writer.WriteNumber("rear", value.Rear);
            writer.WriteEndObject();
        }
    }

    sealed class EventWord : JsonConverter<PastEvent>
    {
        public override PastEvent Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException("Requests are read by ContractReader.");

        public override void Write(Utf8JsonWriter writer, PastEvent value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.Cause is { } cause ? $"{Wire.Word(value.Kind)}:{Wire.Word(cause)}" : Wire.Word(value.Kind));
    }
}
