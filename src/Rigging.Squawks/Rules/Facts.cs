using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.RuleSets;

namespace Rigging.Squawks.Rules;

/// <summary>Everything outside the ledger that the rules rest on, read in the same transaction as the append.</summary>
/// <param name="Now">Server time. <see cref="Squawk.Decide"/> cuts it to whole milliseconds.</param>
/// <param name="Zone">The school's.</param>
/// <param name="OtherSquawks">The aircraft's other open squawks.</param>
/// <param name="Airframe">The version of the airframe data in force for the aircraft; null when none is on file.</param>
/// <param name="Affirmation">Set only by the signature page, after re-authentication.</param>
public sealed record Facts(
    Instant Now,
    DateTimeZone Zone,
    Person Who,
    RuleSet RuleSet,
    IReadOnlyDictionary<ToolId, Tool> Tools,
    IReadOnlyList<OtherSquawk> OtherSquawks,
    AirframeOnFile? Airframe,
    TotalTimeOnRecord? TotalTime,
    Affirmation? Affirmation = null)
{
    /// <summary>The school's calendar day.</summary>
    public LocalDate Today => DayOf(Now);

    /// <summary>The school's calendar day at that moment.</summary>
    public LocalDate DayOf(Instant moment) => moment.InZone(Zone).Date;

    /// <summary>The day on which it was done: today, unless it is entered late.</summary>
    public LocalDate DayOf(IMayComeLate fact) => DayOf(fact.HappenedAt ?? Now);

    /// <summary>Damage of this aircraft is in doubt, by this squawk or by another one.</summary>
    public bool DamageInDoubt(SquawkState state) => state.DamageSuspected || DamageElsewhere;

    public bool DamageElsewhere => OtherSquawks.Any(other => other.DamageSuspected);

    /// <summary>The worst that the aircraft's other squawks allow.</summary>
    public FlightStatus OthersAllow => OtherSquawks.Select(other => other.Allows).DefaultIfEmpty(FlightStatus.MayFly).Max();
}

/// <param name="DamageSuspected">Damage is in doubt there, and so on this aircraft.</param>
public sealed record OtherSquawk(SquawkId Id, int Number, FlightStatus Allows, bool DamageSuspected = false);

/// <summary>The proof that the person just showed: how, when, and of which texts.</summary>
/// <param name="TextSha256">Hash of the text that the page showed, people as tokens: compared with the text as it is now.</param>
/// <param name="ShownSha256">Hash of the same text as rendered, names included.</param>
public sealed record Affirmation(string Method, Instant AuthenticatedAt, string TextSha256, string ShownSha256);
