using System.Globalization;
using System.Text.Json;

namespace Rigging.Mechanics.Contract;

/// <summary>The closed range of a number and its unit; no infinity and no NaN is within it.</summary>
readonly record struct Within(double Low, double High, string Unit = "")
{
    public bool Holds(double value) => value >= Low && value <= High;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"a number from {Low} to {High} {Unit}").TrimEnd();
}

/// <summary>
/// One JSON object read strictly. Every fault is noted and a stand-in handed back (NaN for a number, null for an object), so
/// that reading goes on and the next fault is found too; comparisons with NaN are false, so a faulty number raises no
/// second complaint. What was read counts only when there is no fault.
/// </summary>
sealed class FieldReader
{
    readonly Dictionary<string, JsonElement> fields = new(StringComparer.Ordinal);
    readonly List<string> asked = [];
    readonly List<Fault> faults;
    bool onlyKnownFields = true;

    FieldReader(JsonElement element, string path, List<Fault> faults)
    {
        (Path, this.faults) = (path, faults);
        foreach (var field in element.EnumerateObject())
        {
            if (JsonText.NameOf(field) is not { } name)
                Fault(path, JsonText.Shorten(field.ToString()), "field names in valid Unicode");
            else if (!fields.TryAdd(name, field.Value))
                Fault(PathTo(name), JsonText.Seen(field.Value), "this field once only");
        }
    }

    public string Path { get; }

    /// <summary>Whether nothing at all has been found wrong so far, here or elsewhere.</summary>
    public bool Clean => faults.Count == 0;

    public static T? Read<T>(JsonElement element, string path, List<Fault> faults, Func<FieldReader, T> read)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Add(new(path, JsonText.Seen(element), "an object"));
            return default;
        }
        var reader = new FieldReader(element, path, faults);
        var value = read(reader);
        reader.RefuseTheRest();
        return value;
    }

    public double Number(string name, Within range) => Find(name) is { } element ? NumberOf(element, PathTo(name), range) : Missing(name, range.ToString(), double.NaN);

    public double? NumberIfGiven(string name, Within range) => FindGiven(name) is { } element ? NumberOf(element, PathTo(name), range) : null;

    public int? WholeIfGiven(string name, int low, int high)
    {
        if (FindGiven(name) is not { } element)
            return null;
        if (element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out var value) && value >= low && value <= high)
            return value;
        Fault(PathTo(name), JsonText.Seen(element), $"a whole number from {low} to {high}");
        return low;
    }

    public int Whole(string name, int low, int high) => WholeIfGiven(name, low, high) ?? Missing(name, $"a whole number from {low} to {high}", low);

    public bool? FlagIfGiven(string name)
    {
        if (FindGiven(name) is not { } element)
            return null;
        if (element.ValueKind is JsonValueKind.True or JsonValueKind.False)
            return element.GetBoolean();
        Fault(PathTo(name), JsonText.Seen(element), "true or false");
        return null;
    }

    public bool Flag(string name) => Has(name) ? FlagIfGiven(name) ?? false : Missing(name, "true or false", false);

    public string? TextIfGiven(string name, int longest = 200) => FindGiven(name) is { } element ? TextOf(element, PathTo(name), longest) : null;

    public string Text(string name, int longest = 200) => TextIfGiven(name, longest) ?? Missing(name, $"a text of 1 to {longest} characters", "");

    public T? WordIfGiven<T>(string name) where T : struct, Enum
    {
        if (FindGiven(name) is not { } element)
            return null;
        if (JsonText.Of(element) is { } word && Wire.TryRead<T>(word, out var value))
            return value;
        Fault(PathTo(name), JsonText.Seen(element), OneOf<T>());
        return null;
    }

    /// <summary>Null only together with a fault.</summary>
    public T? Word<T>(string name) where T : struct, Enum => Has(name) ? WordIfGiven<T>(name) : Missing<T?>(name, OneOf<T>(), null);

    public T? ObjectIfGiven<T>(string name, Func<FieldReader, T> read) where T : class =>
        FindGiven(name) is { } element ? Read(element, PathTo(name), faults, read) : null;

    public T Object<T>(string name, Func<FieldReader, T> read) where T : class =>
        Has(name) ? ObjectIfGiven(name, read)! : Missing<T>(name, "an object", null!);

    /// <summary>For a field that may take more than one shape.</summary>
    public T? Shape<T>(string name, Func<JsonElement, string, T?> read) where T : class =>
        FindGiven(name) is { } element ? read(element, PathTo(name)) : null;

    public IReadOnlyList<T> List<T>(string name, int fewest, int most, Func<JsonElement, string, T?> read) =>
        Has(name) ? ListIfGiven(name, fewest, most, read) : Missing<IReadOnlyList<T>>(name, $"a list of {fewest} to {most}", []);

    public IReadOnlyList<T> ListIfGiven<T>(string name, int fewest, int most, Func<JsonElement, string, T?> read)
    {
        var wanted = $"a list of {fewest} to {most}";
        if (FindGiven(name) is not { } element)
            return [];
        if (element.ValueKind != JsonValueKind.Array)
        {
            Fault(PathTo(name), JsonText.Seen(element), wanted);
            return [];
        }
        var length = element.GetArrayLength();
        if (length < fewest || length > most)
            Fault(PathTo(name), $"{length} entries", wanted);
        return [.. element.EnumerateArray().Take(most).Select((item, index) => read(item, $"{PathTo(name)}[{index}]")!)];
    }

    public IReadOnlyList<T> Objects<T>(string name, int fewest, int most, Func<FieldReader, T> read) where T : class =>
        List(name, fewest, most, (item, path) => Read(item, path, faults, read));

    public IReadOnlyList<T> ObjectsIfGiven<T>(string name, int fewest, int most, Func<FieldReader, T> read) where T : class =>
        ListIfGiven(name, fewest, most, (item, path) => Read(item, path, faults, read));

    /// <summary>An object whose field names are the writer's own, each with a number.</summary>
    public IReadOnlyDictionary<string, double> Amounts(string name, Within range) => Object<IReadOnlyDictionary<string, double>>(name, amounts =>
        amounts.fields.Keys.ToDictionary(key => key, key => amounts.Number(key, range), StringComparer.Ordinal));

    public IReadOnlyDictionary<string, double>? AmountsIfGiven(string name, Within range) => Has(name) ? Amounts(name, range) : NotGiven<IReadOnlyDictionary<string, double>>(name);

    /// <summary>Null for a field that was not given, which is known all the same.</summary>
    public T? NotGiven<T>(string name) where T : class
    {
        asked.Add(name);
        return null;
    }

    public bool Has(string name) => fields.TryGetValue(name, out var element) && element.ValueKind != JsonValueKind.Null;

    /// <summary>Notes a fault of a field that is readable by itself but wrong beside another.</summary>
    public void Refuse(string name, string wanted) => Fault(PathTo(name), fields.TryGetValue(name, out var element) ? JsonText.Seen(element) : null, wanted);

    /// <summary>Where the kind itself is unknown, nobody can say which fields belong.</summary>
    public void AllowTheRest() => onlyKnownFields = false;

    public string? TextOf(JsonElement element, string path, int longest)
    {
        if (JsonText.Of(element) is { } text && !string.IsNullOrWhiteSpace(text) && text.Length <= longest && !text.Any(char.IsControl))
            return text;
        Fault(path, JsonText.Seen(element), $"a text of 1 to {longest} characters");
        return "";
    }

    public double NumberOf(JsonElement element, string path, Within range)
    {
        if (element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var value) && range.Holds(value))
            return value;
        Fault(path, JsonText.Seen(element), range.ToString());
        return double.NaN;
    }

    public T? ObjectOf<T>(JsonElement element, string path, Func<FieldReader, T> read) where T : class => Read(element, path, faults, read);

    public void Fault(string path, string? seen, string wanted) => faults.Add(new(path, seen, wanted));

    public string PathTo(string name) => JsonText.IsPlainName(name) ? $"{Path}.{name}" : $"{Path}[{JsonText.Quoted(name)}]";

    static string OneOf<T>() where T : struct, Enum => $"one of {string.Join(", ", Wire.Words<T>())}";

    JsonElement? Find(string name)
    {
        asked.Add(name);
        return fields.TryGetValue(name, out var element) ? element : null;
    }

    JsonElement? FindGiven(string name) => Find(name) is { ValueKind: not JsonValueKind.Null } element ? element : null;

    T Missing<T>(string name, string wanted, T standIn)
    {
        asked.Add(name);
        Refuse(name, wanted);
        return standIn;
    }

    void RefuseTheRest()
    {
        if (!onlyKnownFields)
            return;
        foreach (var (name, element) in fields)
        {
            if (!asked.Contains(name))
                Fault(PathTo(name), JsonText.Seen(element), asked.Count == 0 ? "no field here" : $"only the fields {string.Join(", ", asked.Distinct())}");
        }
    }
}
