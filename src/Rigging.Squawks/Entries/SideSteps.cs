using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Entries;

public enum WaitingFor { Parts, Data, Weather, OutsideShop }

public sealed record Waiting(WaitingFor For, string Reason) : Fact;

public sealed record Resumed(string Reason) : Fact;

/// <summary>A note, a remark on an earlier entry, or a correction of one. Both stay readable.</summary>
/// <param name="Corrects">Sequence of the entry this one corrects; null when it corrects none. Whether it does is for <see cref="Rules.Correcting"/> to say.</param>
/// <param name="RemarkOn">Sequence of the entry this one stands beside; null when it is about none, or corrects it.</param>
public sealed record Noted(string Text, int? Corrects, Instant? HappenedAt = null, int? RemarkOn = null) : Fact, IMayComeLate;

/// <summary>A wrong total time put right: it counts from then on, in the register and on every record. What was signed with the old one keeps it.</summary>
/// <param name="WasH">What stood in the register before, filled in by the program; null where nothing did.</param>
public sealed record TotalTimeCorrected(double TotalTimeH, string Reason, double? WasH = null) : Fact;

/// <summary>Nothing was found. Only after everything opened for access is closed, inspected and entered.</summary>
public sealed record NoFaultFound(string Evaluation, bool EverythingRefitted) : Fact;

/// <summary>An authorised person's written evaluation: inside limits, to be watched.</summary>
public sealed record WithinLimits(string Evaluation, string LimitAndSource, bool EverythingRefitted) : Fact;

/// <summary>The same complaint as another open squawk of the aircraft; its readings feed that one.</summary>
public sealed record JoinedTo(SquawkId Other, int OtherNumber, string Reason) : Fact;

/// <summary>Not a rigging complaint: handed to whoever deals with it.</summary>
public sealed record HandedOver(string To, string Reason) : Fact;
