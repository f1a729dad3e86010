using Rigging.Squawks.People;
using Rigging.Squawks.Signing;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>Names and certificate numbers behind the pseudonyms, as they stand today.</summary>
public sealed record Register(IReadOnlyDictionary<PersonId, string> Names, IReadOnlyDictionary<CertificateId, string> Numbers)
{
    /// <summary>An erased person keeps a place in the record, not a name.</summary>
    public string Name(PersonId person) => Names.GetValueOrDefault(person, Gaps.Fill(Say.PersonErased, person.Value.ToString()[^6..]));

    public string Number(CertificateId certificate) => Numbers.GetValueOrDefault(certificate, "(erased)");

    /// <summary>A stored text with its tokens replaced.</summary>
    public string Render(string text) => SignedText.Render(text, Name, Number);
}
