using System.Diagnostics.CodeAnalysis;

namespace Rigging.Mechanics.Contract;

/// <summary>What came out of reading a text: the value, or every fault found in it.</summary>
public sealed class ReadResult<T> where T : class
{
    internal ReadResult(T? value, IReadOnlyList<Fault> faults)
    {
        Value = faults.Count == 0 ? value : null;
        Faults = faults;
    }

    /// <summary>Null exactly when there are faults.</summary>
    public T? Value { get; }

    public IReadOnlyList<Fault> Faults { get; }

    [MemberNotNullWhen(true, nameof(Value))]
    public bool Ok => Value is not null;
}

/// <summary>One thing wrong with a text.</summary>
/// <param name="Path">Where, as a JSON path: <c>$.testPoints[0].casKt</c>.</param>
/// <param name="Seen">The value found, shortened; null when there was none.</param>
/// <param name="Wanted">What would have been right, for a person: <c>a number from 20 to 400 kt</c>.</param>
public sealed record Fault(string Path, string? Seen, string Wanted)
{
    public override string ToString() => $"{Path}: wanted {Wanted}, {(Seen is null ? "nothing given" : $"seen {Seen}")}";
}
