using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>The grounding questions as boxes to tick, the same on the report and on the call.</summary>
public static class Dangers
{
    public const string Field = "redFlags";

    static readonly Happening[] HappenedToIt = [Happening.HardLanding, Happening.GroundStrike, Happening.FlapOverspeed];
    static readonly RedFlag[] SeenFirst = [RedFlag.Damage, RedFlag.ControlJammed], SeenLast = [RedFlag.FirstFlightAfterAssembly, RedFlag.UnexplainedRecurrence];

    /// <summary>What happened to it, what it did, what was done to it.</summary>
    public static IReadOnlyList<Choice> Choices =>
    [
        .. HappenedToIt.Select(Of),
        .. SeenFirst.Concat(Enum.GetValues<RedFlag>().Except(SeenFirst).Except(SeenLast)).Select(Of),
        .. GroundingQuestions.Happenings.Except(HappenedToIt).Select(Of),
        .. SeenLast.Select(Of),
    ];

    public static (IReadOnlyList<RedFlag> Flags, IReadOnlyList<Happening> Happened) Ticked(IEnumerable<string> answers, Typed typed)
    {
        ArgumentNullException.ThrowIfNull(answers);
        ArgumentNullException.ThrowIfNull(typed);
        var happened = answers.ToLookup(answer => GroundingQuestions.Happenings.Any(danger => danger.ToString() == answer));
        var flags = happened[false].Where(answer => Known(answer, typed)).Select(Enum.Parse<RedFlag>);
        return ([.. flags.Distinct()], [.. happened[true].Select(Enum.Parse<Happening>).Distinct()]);
    }

    static bool Known(string answer, Typed typed)
    {
        if (Enum.GetNames<RedFlag>().Contains(answer)) return true;
        typed.Choice<RedFlag>(answer, Field, Say.GroundingQuestions);
        return false;
    }

    static Choice Of(Happening happening) => new(happening.ToString(), Words.Capital(Words.Of(happening)));

    static Choice Of(RedFlag flag) => new(flag.ToString(), Words.Capital(Words.Of(flag)));
}
