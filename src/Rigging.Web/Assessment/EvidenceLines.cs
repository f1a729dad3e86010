using System.Text.Json.Nodes;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;
using Check = Rigging.Squawks.Entries.Check;

namespace Rigging.Web.Assessment;

/// <summary>One piece of evidence, how it agrees with the rest, and what it did.</summary>
/// <param name="Agrees">Null for what is no number.</param>
/// <param name="Odd">It lies further off than one reading in a hundred does by chance.</param>
public sealed record EvidenceLine(string What, string? Agrees, bool Odd, string Did);

/// <summary>"What moved this": every reading and check the assessment rests on.</summary>
static class EvidenceLines
{
    const double Odd = 2.6, WorthSayingDegPerS = 0.05, WorthSayingProbability = 0.03;

    public static IReadOnlyList<EvidenceLine> Of(Outlook outlook, string request, Equivalents coins)
    {
        var json = JsonNode.Parse(request)!;
        var fits = outlook.Fits.ToDictionary(fit => (fit.Point, fit.Index));
        return [.. outlook.Influences().Select(influence =>
        {
            var fit = fits.GetValueOrDefault((influence.Point, influence.Index));
            return new EvidenceLine(Name(json, influence), fit is null ? null : Agreement(fit.Misfit), Math.Abs(fit?.Misfit ?? 0) > Odd, Did(influence, coins));
        })];
    }

    static string Name(JsonNode request, Influence influence)
    {
        if (influence.Point is { } place)
        {
            var point = request["testPoints"]![place]!;
            var manoeuvre = Wire.TryRead<Manoeuvre>(point["manoeuvre"]!.GetValue<string>(), out var known) ? Words.Of(known) : "";
            return $"{ReadingWords.Of(point["readings"]![influence.Index]!.AsObject())} ({manoeuvre}, {Words.Number(ReadingWords.Number(point["casKt"]) ?? 0, 0)}{Space}kt)";
        }
        var kind = request["groundChecks"]![influence.Index]!["kind"]!.GetValue<string>();
        return Enum.GetValues<Check>().Where(check => Wire.Word(check) == kind).Select(check => Gaps.Fill(Say.OnGround, Words.Of(check))).FirstOrDefault() ?? kind;
    }

    static string Agreement(double misfit) => Math.Abs(misfit) switch
    {
        < 1 => Say.Agrees,
        < 2 => Say.NearEnough,
        <= Odd => Say.SomewhatOff,
        _ => Say.DoesNotFitLook,
    };

    static string Did(Influence influence, Equivalents coins)
    {
        List<string> did = [];
        if (Math.Abs(influence.TendencyDegPerS) >= WorthSayingDegPerS)
            did.Add(Gaps.Fill(Say.MovedTendencyBy, RollRate(influence.TendencyDegPerS)) + (coins.Flats(influence.TendencyDegPerS) is { } flats ? Gaps.Fill(Say.WorthFlats, flats) : ""));
        if (Math.Abs(influence.With - influence.Without) >= WorthSayingProbability)
            did.Add(Gaps.Fill(Say.FromTo, Words.Of(influence.Cause), Words.Percent(influence.Without), Words.Percent(influence.With)));
        return did.Count == 0 ? Say.ChangedLittle : string.Join("; ", did);
    }
}
