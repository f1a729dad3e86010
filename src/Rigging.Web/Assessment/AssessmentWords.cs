using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using static Rigging.Squawks.Rules.Directions;
using Check = Rigging.Squawks.Entries.Check;
using Move = Rigging.Mechanics.Contract.Move;
using Control = Rigging.Squawks.Entries.Control;

namespace Rigging.Web.Assessment;

/// <summary>An assessment's numbers as people say them: sides in words, nine chances in ten as an interval.</summary>
static class AssessmentWords
{
    /// <summary>What the aeroplane does, in one sentence.</summary>
    public static string Tendency(Estimate? tendency, ReferencePoint reference) => tendency is null
        ? "Nothing on record says how much it rolls."
        : $"{Heavy(tendency.Mean)}: {RollRate(tendency.Mean)} with hands off and the ball centred, {Between(tendency, RollRate)}, at {Words.Number(reference.CasKt, 0)}{Space}kt and {Words.Number(reference.PressureAltitudeFt, 0)}{Space}ft with the load it is rigged for ({Directions.Load(reference.Load)}).";

    static string Heavy(double degPerS) => Math.Round(Math.Abs(degPerS), 2) == 0 ? "Flies level" : degPerS < 0 ? "Left-wing heavy" : "Right-wing heavy";

    public static string Between(Estimate estimate, Func<double, string> words) => $"nine times in ten between {words(estimate.Low)} and {words(estimate.High)}";

    /// <summary>How large a cause is, if it is there.</summary>
    public static string Amplitude(Cause cause, double value, Equivalents coins) => cause switch
    {
        Cause.FuelAndLoading => Sized(value, $"{Space}L more on the left than reported", $"{Space}L more on the right than reported", "as reported"),
        Cause.PanelIncidenceDifference => Difference(value, "panel", "more incidence"),
        Cause.TipIncidenceDifference => Difference(value, "tip", "more incidence"),
        Cause.FlapDifference => Difference(value, "flap", "lower"),
        Cause.AileronFloat or Cause.AileronNeutralOffset => Sized(value, "° toward left wing down", "° toward right wing down", "in line"),
        Cause.RudderOrFinOffset => Sized(value, "° of rudder, trailing edge right", "° of rudder, trailing edge left", "in line"),
        Cause.InstrumentMisalignment => $"ball {Ball(value)} in true balance",
        Cause.ContourOrFairing or Cause.DamageOrMisassembly => $"a moment worth {RollRate(coins.OfMoment(value))}",
        Cause.ControlFriction => $"{Words.Number(value, 1)}{Space}N at the wheel rim",
        Cause.Slipstream => $"{Words.Number(value)} of the usual slipstream more",
        _ => throw new ArgumentOutOfRangeException(nameof(cause)),
    };

    static string Sized(double value, string left, string right, string none) =>
        Math.Round(Math.Abs(value), 2) == 0 ? none : $"{Words.Number(Math.Abs(value))}{(value < 0 ? left : right)}";

    /// <summary>A test's name as it comes from the mechanics, in the trade's words.</summary>
    public static string Test(string test)
    {
        var parts = test.Split(':', '@');
        return parts switch
        {
            ["ground-check", var check, ..] => Enum.GetValues<Check>().Where(known => Wire.Word(known) == check).Select(known => $"On the ground: {Words.Of(known)}").FirstOrDefault() ?? Plain(test),
            ["test-point", var manoeuvre, var where, ..] when Wire.TryRead<Manoeuvre>(manoeuvre, out var known) => $"In the air at {string.Join(", ", where.Split(',').Select(Condition))}: {Words.Of(known)}",
            ["measure", var what, ..] => $"Measure {Plain(what)}",
            _ => Plain(test),
        };
    }

    /// <summary>One condition of a test point: <c>95kt</c>, <c>flap10</c>, <c>power90</c>.</summary>
    static string Condition(string word) => word switch
    {
        "last-input-left-and-right" => "twice, the wheel last moved to the left and to the right",
        _ when word.EndsWith("kt", StringComparison.Ordinal) => $"{word[..^2]}{Space}kt",
        _ when word.StartsWith("flap", StringComparison.Ordinal) => $"flap {word["flap".Length..]}°",
        _ when word.StartsWith("power", StringComparison.Ordinal) => $"power {word["power".Length..]}{Space}%",
        _ => Plain(word),
    };

    static string Plain(string word) => word.Replace('-', ' ').Replace(":", ": ", StringComparison.Ordinal);

    /// <summary>A sentence of the mechanics with the catalogue's words in place of its codes.</summary>
    public static string Sentence(string sentence) => Enum.GetValues<Cause>().Aggregate(sentence, (text, cause) => text.Replace(Wire.Word(cause), Words.Of(cause), StringComparison.Ordinal));

    /// <summary>One move as the mechanic reads it.</summary>
    public static string Instruction(Move move)
    {
        var wing = move.Control is AdjustableControl.LeftEccentric or AdjustableControl.LeftStrutFork ? "Left wing" : move.Control is AdjustableControl.RightEccentric or AdjustableControl.RightStrutFork ? "Right wing" : Words.Of(ControlOf(move));
        var edge = move.TrailingEdge is { } way ? $"trailing edge {Wire.Word(way)}" : "trailing edge back to the same height";
        var flats = move.Flats is { } size ? $" by {FlatsInWords.Of(size)}" : "";
        var turn = move.Turn is { } seen ? $" Turn it {seen}." : " The way to turn is not on file: find it by measurement.";
        return $"{wing}: {edge}{flats}, eccentric from {EccentricDrawings.Setting(move.FromDeg)} to {EccentricDrawings.Setting(move.ToDeg)}; front and rear bushing together.{turn}";
    }

    public static Control ControlOf(Move move) => Enum.Parse<Control>(move.Control.ToString());
}
