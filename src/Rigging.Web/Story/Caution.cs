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
            yield return new(RemarkKind.Stop, $"Something was left loose: {loose} Do not move the aircraft, and do not touch the controls.");
        if (state.RedFlagged)
            yield return new(RemarkKind.Stop, Flags(state));
        else if (state.DamageClear == false)
            yield return new(RemarkKind.Stop, "The last damage inspection found damage. It stays grounded until a later one is clear.");
        if (state.FlightStatus == FlightStatus.Limits && state.Call?.Limits is { } limits)
            yield return new(RemarkKind.Caution, $"It may fly, within these limits: {limits}");
        if (state.FlightStatus == FlightStatus.CrewOnly)
            yield return new(RemarkKind.Caution, "The work is approved, and passengers are barred until the check flight is logged. Crew only.");
        if (file.Facts.OthersAllow > state.FlightStatus)
            yield return new(RemarkKind.Caution, $"Another squawk, {Others(file)}, keeps {file.Aircraft.Registration} {Words.Of(file.Facts.OthersAllow)}. Look there too.");
        if (state.Waiting is { } waiting)
            yield return new(RemarkKind.Note, $"Waiting for {Words.Of(waiting.For)}: {waiting.Reason}");
        if (state.HasNewerEntries)
            yield return new(RemarkKind.Caution, "Some entries were written by a newer version of the program and cannot be read here. Nothing can be signed until this one is updated.");
    }

    static string Flags(SquawkState state) => state.Report is { RedFlags.Count: > 0 } report
        ? $"Red flags: {string.Join("; ", report.RedFlags.Select(Words.Of))}. It stays grounded until a damage inspection is clear."
        : "A control moved the wrong way at an inspection. It stays grounded until a damage inspection is clear.";

    static string Others(SquawkFile file) =>
        string.Join(", ", file.Facts.OtherSquawks.Where(other => other.Allows == file.Facts.OthersAllow).Select(other => $"S-{other.Number}"));
}
