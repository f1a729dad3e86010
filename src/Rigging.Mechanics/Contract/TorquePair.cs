using System.Text.Json;
using System.Text.Json.Serialization;

namespace Rigging.Mechanics.Contract;

/// <summary>A torque range as the pair <c>[least, greatest]</c> in inch-pounds.</summary>
sealed class TorquePair : JsonConverter<TorqueRange>
{
    static readonly Within InLb = new(1, 20_000, "in-lb");

    public static TorqueRange? Read(FieldReader fastener, JsonElement element, string path)
    {
        if (element.ValueKind != JsonValueKind.Array || element.GetArrayLength() != 2)
        {
            fastener.Fault(path, JsonText.Seen(element), "two numbers, least and greatest torque");
            return null;
        }
        var read = new TorqueRange(fastener.NumberOf(element[0], $"{path}[0]", InLb), fastener.NumberOf(element[1], $"{path}[1]", InLb));
        if (read.Greatest < read.Least)
            fastener.Fault(path, JsonText.Seen(element), "least torque first");
        return read;
    }

    public override TorqueRange Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Airframes are read by ContractReader.");

    public override void Write(Utf8JsonWriter writer, TorqueRange value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(value.Least);
        writer.WriteNumberValue(value.Greatest);
        writer.WriteEndArray();
    }
}
