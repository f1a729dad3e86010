using System.Text.Json;

namespace Rigging.Web.Desk;

/// <summary>What a person typed into a form, by field name, right or wrong. It comes from a post or from a draft, in the draft script's own JSON.</summary>
public sealed class TypedFields
{
    readonly Dictionary<string, IReadOnlyList<string>> fields = [];

    /// <summary>A posted form without the framework's own fields and without secrets.</summary>
    public static TypedFields Of(IFormCollection form)
    {
        var typed = new TypedFields();
        foreach (var (name, values) in form)
            if (name.Length > 0 && !name.StartsWith('_') && name != "password") typed.fields[name] = [.. values.OfType<string>()];
        return typed;
    }

    /// <summary>A draft; empty when there is none, or none that can be read.</summary>
    public static TypedFields Read(string? json)
    {
        var typed = new TypedFields();
        try
        {
            using var draft = JsonDocument.Parse(json ?? "{}");
            if (draft.RootElement.ValueKind != JsonValueKind.Object) return typed;
            foreach (var field in draft.RootElement.EnumerateObject())
                typed.fields[field.Name] = field.Value.ValueKind switch
                {
                    JsonValueKind.Array => [.. field.Value.EnumerateArray().Select(Text)],
                    JsonValueKind.Null => [],
                    _ => [Text(field.Value)],
                };
        }
        catch (JsonException)
        {
            // Saved by something else: the form starts empty.
        }
        return typed;
    }

    /// <summary>As typed; null when the field was never sent. Of several, the first.</summary>
    public string? this[string name]
    {
        get => fields.TryGetValue(name, out var values) && values.Count > 0 ? values[0] : null;
        set => fields[name] = value is null ? [] : [value];
    }

    /// <summary>Every value sent under a name.</summary>
    public IReadOnlyList<string> All(string name) => fields.TryGetValue(name, out var values) ? values : [];

    public void Set(string name, IReadOnlyList<string> values) => fields[name] = values;

    public bool Ticked(string name) => this[name] is "true" or "on";

    /// <summary>Whether anything was entered in a field whose name begins so.</summary>
    public bool Begins(string prefix) => fields.Any(field => field.Key.StartsWith(prefix, StringComparison.Ordinal) && field.Value.Any(value => value.Length > 0));

    public bool Any => fields.Values.Any(values => values.Any(value => value.Length > 0));

    /// <summary>One item a line, blank lines left out.</summary>
    public IReadOnlyList<string> Lines(string name) => (this[name] ?? "").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Null when nothing but blanks was typed.</summary>
    public string? Text(string name) => string.IsNullOrWhiteSpace(this[name]) ? null : this[name]!.Trim();

    /// <summary>Forgets every field whose name begins so: that part of the form was taken in.</summary>
    public void Clear(string prefix)
    {
        foreach (var name in fields.Keys.Where(name => name.StartsWith(prefix, StringComparison.Ordinal)).ToList()) fields.Remove(name);
    }

    public string ToJson() => JsonSerializer.Serialize(fields.ToDictionary(field => field.Key, field => (object)(field.Value.Count == 1 ? field.Value[0] : field.Value)));

    static string Text(JsonElement value) => value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText();
}
