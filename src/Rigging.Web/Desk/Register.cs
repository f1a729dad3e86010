using NodaTime;
using Rigging.Squawks.People;
using Rigging.Squawks.Signing;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>Names and certificate numbers behind the pseudonyms, as they stand today, and the names people had before.</summary>
/// <param name="Earlier">Every change of a name, the earliest first.</param>
public sealed record Register(IReadOnlyDictionary<PersonId, string> Names, IReadOnlyDictionary<CertificateId, string> Numbers, IReadOnlyList<EarlierName> Earlier)
{
    /// <summary>An erased person keeps a place in the record, not a name.</summary>
    public string Name(PersonId person) => Names.GetValueOrDefault(person, Gaps.Fill(Say.PersonErased, person.Value.ToString()[^6..]));

    /// <summary>The name that a person had at that moment.</summary>
    public string Name(PersonId person, Instant at) => Earlier.FirstOrDefault(change => change.Person == person && change.Until >= at)?.Name ?? Name(person);

    /// <summary>The same, with today's name where that is another.</summary>
    public string NameThenAndNow(PersonId person, Instant at) => (Name(person, at), Name(person)) is var (then, now) && then != now ? Gaps.Fill(Say.NameThenAndNow, then, now) : now;

    public string Number(CertificateId certificate) => Numbers.GetValueOrDefault(certificate, "(erased)");

    /// <summary>A stored text with its tokens replaced by what the register says today.</summary>
    public string Render(string text) => SignedText.Render(text, Name, Number);

    /// <summary>The same with the names of that moment: as it was read when it was signed.</summary>
    public string Render(string text, Instant at) => SignedText.Render(text, person => Name(person, at), Number);
}

/// <param name="Until">From then on the person had another name.</param>
public sealed record EarlierName(PersonId Person, string Name, Instant Until);
