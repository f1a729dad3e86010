using System.Diagnostics.CodeAnalysis;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics;

/// <summary>What was asked for, or every reason why it cannot be had.</summary>
public sealed class Answer<T> where T : class
{
    Answer(T? value, IReadOnlyList<Refusal> refusals) => (Value, Refusals) = (value, refusals);

    /// <summary>Null exactly when there are refusals.</summary>
    public T? Value { get; }

    public IReadOnlyList<Refusal> Refusals { get; }

    [MemberNotNullWhen(true, nameof(Value))]
    public bool Ok => Value is not null;

    public static implicit operator Answer<T>(T value) => new(value, []);

    public static implicit operator Answer<T>(Refusal refusal) => new(null, [refusal]);

    public static implicit operator Answer<T>(List<Refusal> refusals) =>
        refusals.Count > 0 ? new(null, refusals) : throw new ArgumentException("A refusal has a reason.", nameof(refusals));
}
