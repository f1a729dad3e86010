using Rigging.Squawks.Entries;
using Rigging.Web.Look;
using Words = Rigging.Squawks.Rules.Words;

namespace Rigging.Web.Desk;

/// <summary>How the trims stood and what the autopilot did on a flight, as chosen; nothing is chosen beforehand.</summary>
static class TrimForm
{
    public const string Roll = "rollTrim", Yaw = "yawTrim", Autopilot = "autopilot";

    public static IReadOnlyList<Choice> Rolls => [.. Enum.GetValues<RollTrim>().Select(trim => new Choice($"{trim}", Words.Of(trim)))];

    public static IReadOnlyList<Choice> Yaws => [.. Enum.GetValues<YawTrim>().Select(trim => new Choice($"{trim}", Words.Of(trim)))];

    public static IReadOnlyList<Choice> Autopilots => [.. Enum.GetValues<FlownAutopilot>().Select(autopilot => new Choice($"{autopilot}", Words.Of(autopilot)))];

    /// <summary>Null where nothing was chosen.</summary>
    public static TrimsFlown? Read(TypedFields fields, Typed typed)
    {
        T? Chosen<T>(string field, string name) where T : struct, Enum => fields.Text(field) is { } text ? typed.Choice<T>(text, field, name) : null;

        var trims = new TrimsFlown(Chosen<RollTrim>(Roll, Say.RollTrim), Chosen<YawTrim>(Yaw, Say.YawTrim), Chosen<FlownAutopilot>(Autopilot, Say.Autopilot));
        return trims == new TrimsFlown(null, null, null) ? null : trims;
    }
}
