using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Story;

/// <summary>What anybody near the aircraft must know before anything else: what happens, then what to do.</summary>
public sealed record Caution(RemarkKind Kind, string Text)
{
    public static IReadOnlyList<Caution> Of(SquawkFile file) => [.. All(file)];

    static IEnumerable<Caution> All(SquawkFile file)
    {
        var state = file.State;
        if (state.Stage?.IsOpen() != true) yield break;
        if (state.Loose is { } loose)
            yield return new(RemarkKind.Stop, Gaps.Fill(Say.SomethingWasLeftLooseDo, loose));
        if (state.RedFlagged)
            yield return new(RemarkKind.Stop, Gaps.Fill(Say.RedFlagsItStaysGrounded, string.Join("; ", state.DamageQuestions)));
        else if (state.DamageClear == false)
            yield return new(RemarkKind.Stop, Say.LastDamageInspectionFound);
        if (state.FlightStatus == FlightStatus.Limits && state.Call?.Limits is { } limits)
            yield return new(RemarkKind.Caution, Gaps.Fill(Say.LimitsInForce, limits));
        if (state.FlightStatus == FlightStatus.CrewOnly)
            yield return new(RemarkKind.Caution, Say.WorkIsApprovedAndPassengersAreBarred);
        if (file.Facts.OthersAllow > state.FlightStatus)
            yield return new(RemarkKind.Caution, Gaps.Fill(Say.AnotherSquawkKeepsLook, Others(file), file.Aircraft.Registration, Words.Of(file.Facts.OthersAllow)));
        if (state.Waiting is { } waiting)
            yield return new(RemarkKind.Note, Gaps.Fill(Say.WaitingForBecause, Words.Of(waiting.For), waiting.Reason));
        if (state.HasNewerEntries)
            yield return new(RemarkKind.Caution, Say.SomeEntriesWereWritten);
    }

    static string Others(SquawkFile file) =>
        string.Join(", ", file.Facts.OtherSquawks.Where(other => other.Allows == file.Facts.OthersAllow).Select(other => $"S-{other.Number}"));
}
