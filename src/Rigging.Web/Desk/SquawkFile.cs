using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Web.Demo;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>Everything a squawk's page shows and asks, as one person sees it at one moment.</summary>
public sealed record SquawkFile(Ledger Ledger, Facts Facts, AircraftOnFile Aircraft, Register Register, SchoolOnFile School)
{
    /// <summary>Of the last entry, hexadecimal: printed on paper, so that paper and ledger can be compared.</summary>
    public string HeadHash => Convert.ToHexStringLower(Ledger.Head!);

    public SquawkId Id => Ledger.Id;
    public SquawkState State => Ledger.State;
    public int Number => State.Report!.Number;

    /// <summary>What the aircraft may do, over all its squawks.</summary>
    public FlightStatus AircraftMay => State.FlightStatus > Facts.OthersAllow ? State.FlightStatus : Facts.OthersAllow;

    public NextAct? Next => NextAct.Of(State, Facts);

    /// <summary>What stands in the way of this person making such an entry now; empty when nothing does.</summary>
    public IReadOnlyList<BrokenRule> WhatBlocks<T>() where T : Fact => Squawk.WhatBlocks<T>(Ledger, Facts);

    public IReadOnlyList<BrokenRule> WhatBlocks(Type kind) => Squawk.WhatBlocks(kind, Ledger, Facts);

    /// <summary>What the rules say against this entry, the password aside; empty when it may be put forward for signature.</summary>
    public IReadOnlyList<BrokenRule> WhatSpeaksAgainst(Fact fact) =>
        Squawk.Decide(Ledger, fact, Facts) is Decision.Refused refused ? [.. refused.Broken.Where(rule => rule.Code != "not-reauthenticated")] : [];

    public string When(Instant instant) => School.When(instant);

    /// <summary>How a signature was given: "by password".</summary>
    public static string How(Signature signature) => signature.Method == StoryTeller.Method ? Say.InAnInventedStory : Gaps.Fill(Say.ByMethod, signature.Method);

    /// <summary>An entry in one line, to choose among: its number, what it is, who made it and when.</summary>
    public string Line(Entry entry) => $"{entry.Sequence}. {EntryCodec.KindOf(entry.Fact).Replace('-', ' ')}, {Register.Name(entry.By)}, {When(entry.At)}";
}

public sealed record AircraftOnFile(AircraftId Id, string Registration, string Serial, string AirframeName, double TotalTimeH);

/// <param name="PasskeysOnly">Passwords sign nothing, and let in nobody who has a passkey.</param>
public sealed record SchoolOnFile(string Name, DateTimeZone Zone, string RuleSet, bool PasskeysOnly = false)
{
    /// <summary>A moment in the school's time zone, to the minute.</summary>
    public string When(Instant instant) => instant.InZone(Zone).ToString("uuuu-MM-dd HH:mm", null);
}
