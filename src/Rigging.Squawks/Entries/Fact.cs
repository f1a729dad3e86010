using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Entries;

/// <summary>What one entry says. A released shape never changes: a new shape is a new version of its kind.</summary>
public abstract record Fact;

/// <summary>A fact that may be entered after it happened. Both times stay: this one, as its author says, and the entry's own.</summary>
public interface IMayComeLate
{
    /// <summary>When it happened; null when that is when it was entered.</summary>
    Instant? HappenedAt { get; }
}

/// <summary>One fact in a squawk's ledger, with who put it there, when, and acting as what.</summary>
/// <param name="At">Server time, whole milliseconds.</param>
/// <param name="Signature">Present on the five acts and the other entries that must be signed; null elsewhere.</param>
public sealed record Entry(int Sequence, Instant At, PersonId By, Authority As, Fact Fact, Signature? Signature = null)
{
    /// <summary>When what it says happened: earlier than its own time where it was entered late.</summary>
    public Instant Moment() => (Fact as IMayComeLate)?.HappenedAt ?? At;
}

/// <summary>A deliberate act of one person under one text.</summary>
/// <param name="Text">What was affirmed, people and certificates as tokens (see <see cref="Signing.SignedText"/>).</param>
/// <param name="ShownSha256">Hash of the rendered text exactly as the page showed it, names included.</param>
/// <param name="Method">How the person proved to be themselves at that moment.</param>
public sealed record Signature(string Text, string ShownSha256, string Method, Instant AuthenticatedAt, CertificateId? Certificate, string? CertificateKind);

/// <summary>An entry of a kind or version this program does not know: shown, never guessed at, and it blocks signing.</summary>
public sealed record NewerEntry(string Kind, int Version, string Payload) : Fact;
