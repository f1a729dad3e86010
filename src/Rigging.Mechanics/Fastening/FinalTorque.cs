using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Fastening;

/// <summary>The torque it takes to turn the part before the nut touches, measured on this fastener.</summary>
/// <param name="Turned">The part that was turned to measure it: a head also drags its shank through the hole.</param>
public sealed record RunOn(Torque Torque, TurnedPart Turned);

/// <summary>
/// What the fastener is brought to: the wanted torque plus the measured run-on, unless the wanted torque includes it.
/// </summary>
/// <remarks>AC 43.13-1B par. 7-40(d): the friction measured while the nut runs on is added to the wanted torque.</remarks>
public sealed class FinalTorque
{
    FinalTorque(Torque least, Torque greatest, TurnedPart turned) => (Least, Greatest, Turned) = (least, greatest, turned);

    public Torque Least { get; }

    /// <summary>Never exceeded, also not to line up a cotter hole.</summary>
    public Torque Greatest { get; }

    public Torque Middle => (Least + Greatest) / 2;

    public TurnedPart Turned { get; }

    /// <summary>
    /// Refused as <c>lubrication-differs</c>, <c>turned-part-differs</c>, <c>run-on-missing</c>, <c>run-on-of-other-part</c>
    /// or <c>run-on-out-of-range</c>.
    /// </summary>
    /// <param name="threads">As they are now.</param>
    /// <param name="turned">The part the wrench is on.</param>
    /// <param name="runOn">Zero is a measurement too; null only when the target includes prevailing torque.</param>
    public static Answer<FinalTorque> For(TorqueTarget target, Lubrication threads, TurnedPart turned, RunOn? runOn)
    {
        ArgumentNullException.ThrowIfNull(target);
        var refusals = new List<Refusal>();
        if (threads != target.Lubrication)
            refusals.Add(new("lubrication-differs", $"The torque is for {Wire.Word(target.Lubrication)} threads and these are {Wire.Word(threads)}: make them so, or find data for these."));
        // The head needs more than the nut by its shank's friction. A measured run-on tells how much; a figure that includes the nut's does not.
        if (turned != target.Turned && (target.IncludesPrevailing || target.Turned == TurnedPart.Head))
            refusals.Add(new("turned-part-differs", $"The torque is for turning the {Wire.Word(target.Turned)}: turn that, or find data for the {Wire.Word(turned)}."));
        if (runOn is null && !target.IncludesPrevailing)
            refusals.Add(new("run-on-missing", "The torque does not include prevailing torque: measure the run-on and enter it, 0 for a plain nut."));
        if (runOn is not null && runOn.Turned != turned)
            refusals.Add(new("run-on-of-other-part", $"The run-on was measured at the {Wire.Word(runOn.Turned)} and the {Wire.Word(turned)} is turned: measure it there."));
        if (runOn is not null && !(runOn.Torque >= Torque.Zero && runOn.Torque < target.Greatest))
            refusals.Add(new("run-on-out-of-range", $"A run-on of {Words.InLb(runOn.Torque)} in·lb cannot be: wanted 0 to less than the target's {Words.InLb(target.Greatest)}."));
        if (refusals.Count > 0)
            return refusals;
        var added = target.IncludesPrevailing ? Torque.Zero : runOn!.Torque;
        return new FinalTorque(target.Least + added, target.Greatest + added, turned);
    }

    /// <summary>What is wrong with a torque that was reached; empty when nothing. Codes <c>torque-below-target</c>, <c>torque-above-target</c>.</summary>
    public IReadOnlyList<Refusal> Judge(Torque reached)
    {
        if (!Words.AtLeast(reached, Least))
            return [new("torque-below-target", $"Reached {Words.InLb(reached)} in·lb; wanted {Words.InLb(Least)} to {Words.InLb(Greatest)}.")];
        if (!Words.AtMost(reached, Greatest))
            return [new("torque-above-target", $"Reached {Words.InLb(reached)} in·lb; wanted {Words.InLb(Least)} to {Words.InLb(Greatest)}. Back off; the bolt may have stretched: check it before it is used again.")];
        return [];
    }

    /// <summary>
    /// What is wrong with a castle nut whose slot and hole line up at this torque; empty when a pin may go in. Begin looking at
    /// <see cref="Least"/> and never pass <see cref="Greatest"/> (AC 43.13-1B par. 7-40): if no slot comes, change washer or nut.
    /// </summary>
    public IReadOnlyList<Refusal> JudgeCastleNut(Torque linesUpAt) => Judge(linesUpAt) is [var wrong]
        ? [wrong with { Sentence = $"Slot and hole line up at {Words.InLb(linesUpAt)} in·lb, outside {Words.InLb(Least)} to {Words.InLb(Greatest)}: change the washer or the nut, neither stop short nor pull on." }]
        : [];

    /// <summary>
    /// What is wrong with a self-locking nut that is used again; empty when it still grips. <c>nut-worn</c> below table 7-2;
    /// <c>nut-not-in-table</c> where the table has no value, so that the nut's own data decide.
    /// </summary>
    public static IReadOnlyList<Refusal> JudgeReusedLockingNut(string thread, RunOn runOn)
    {
        ArgumentNullException.ThrowIfNull(runOn);
        if (TorqueTable.LeastPrevailing(thread) is not { } least)
            return [new("nut-not-in-table", $"Table 7-2 has no value for {thread}: take the least prevailing torque from the nut's own data, or fit a new nut.")];
        return Words.AtLeast(runOn.Torque, least) ? [] : [new("nut-worn", $"The nut turns at {Words.InLb(runOn.Torque)} in·lb; used again it must take at least {Words.InLb(least)}. Fit a new nut.")];
    }
}
