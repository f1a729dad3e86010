using Rigging.Squawks.Entries;
using Rigging.Web.Look;
using Words = Rigging.Squawks.Rules.Words;

namespace Rigging.Web.Desk;

/// <summary>How far a strut fork, a flap rod or a tab is moved, in words and no sign.</summary>
static class AdjusterWords
{
    public static string HowFar(Control control, double from, double to)
    {
        var (size, more) = (Words.Number(Math.Abs(to - from)), to > from);
        return control switch
        {
            Control.AileronTab => Gaps.Fill(more ? Say.BentDown : Say.BentUp, size),
            Control.RudderTab => Gaps.Fill(more ? Say.BentLeft : Say.BentRight, size),
            _ when size == "1" => more ? Say.OneTurnOut : Say.OneTurnIn,
            _ => Gaps.Fill(more ? Say.TurnsOut : Say.TurnsIn, size),
        };
    }
}
