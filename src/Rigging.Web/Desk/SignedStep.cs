using Rigging.Squawks.Entries;

namespace Rigging.Web.Desk;

/// <summary>A step whose entry is one of the signed acts: it prepares the text and leaves the signing to the signature page.</summary>
public abstract class SignedStep<T> : StepPage<T> where T : Fact
{
    protected override async Task Take(T fact, int lengthSeen)
    {
        await Drafts.SaveFact(await Actor.Me(), Number, fact);
        Navigation.NavigateTo($"squawks/{Number}/sign/{EntryCodec.KindOf<T>()}");
    }
}
