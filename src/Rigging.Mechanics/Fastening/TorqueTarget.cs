using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Fastening;

/// <summary>
/// The torque wanted in a fastener before any prevailing torque is added, and the conditions it holds for.
/// </summary>
/// <remarks>
/// The manual comes first. The standard table is opened only by citing where the manual is silent (AC 43.13-1B par. 7-40).
/// Either way three questions are answered before a wrench is set: does the figure already include prevailing torque, is it
/// for dry or lubricated threads, and is the nut or the head turned. An unanswered question is refused, never assumed.
/// </remarks>
public sealed class TorqueTarget
{
    // What the largest sizes of light-aeroplane hardware stay well below.
    static readonly Torque Absurd = Torque.FromPoundForceInches(20_000);

    TorqueTarget(Torque least, Torque greatest, bool includesPrevailing, Lubrication lubrication, TurnedPart turned, string source) =>
        (Least, Greatest, IncludesPrevailing, Lubrication, Turned, Source) = (least, greatest, includesPrevailing, lubrication, turned, source);

    public Torque Least { get; }

    public Torque Greatest { get; }

    /// <summary>Whether what the locking nut takes to turn is already in the figure.</summary>
    public bool IncludesPrevailing { get; }

    /// <summary>The threads it holds for; there is no rule of thumb from one to the other.</summary>
    public Lubrication Lubrication { get; }

    /// <summary>The part that is turned to reach it.</summary>
    public TurnedPart Turned { get; }

    /// <summary>The manual's section and revision, or the table and why it may be used.</summary>
    public string Source { get; }

    /// <summary>
    /// A figure from the aeroplane's approved data. Refused as <c>manual-not-cited</c>, <c>torque-range-wrong</c>,
    /// <c>prevailing-not-answered</c>, <c>lubrication-not-answered</c>, <c>turned-part-not-answered</c>.
    /// </summary>
    /// <param name="citation">Manual, section and revision.</param>
    /// <param name="least">The same as <paramref name="greatest"/> when the manual gives one figure.</param>
    public static Answer<TorqueTarget> FromManual(string citation, Torque least, Torque greatest, bool? includesPrevailing, Lubrication? lubrication, TurnedPart? turned)
    {
        var refusals = new List<Refusal>();
        if (string.IsNullOrWhiteSpace(citation))
            refusals.Add(new("manual-not-cited", "Name the manual, section and revision that give this torque."));
        if (!(least > Torque.Zero && least <= greatest && greatest < Absurd))
            refusals.Add(new("torque-range-wrong", $"A torque of {Words.InLb(least)} to {Words.InLb(greatest)} in·lb cannot be: wanted a range above 0, least first, below {Words.InLb(Absurd)}."));
        if (includesPrevailing is null)
            refusals.Add(new("prevailing-not-answered", "Does the manual's figure already include prevailing torque? Yes or no is needed before anything is added."));
        if (lubrication is null)
            refusals.Add(new("lubrication-not-answered", "Is the manual's figure for dry or for lubricated threads?"));
        if (turned is null)
            refusals.Add(new("turned-part-not-answered", "Is the manual's figure for turning the nut or the bolt head?"));
        return refusals.Count > 0
            ? refusals
            : new TorqueTarget(least, greatest, includesPrevailing!.Value, lubrication!.Value, turned!.Value, citation.Trim());
    }

    /// <summary>
    /// A figure from the standard table, for dry threads, the nut turned, prevailing torque not included. Refused as
    /// <c>manual-silence-not-cited</c> unless somebody says where the manual was looked into and gives no value, and as
    /// <c>thread-not-in-table</c>.
    /// </summary>
    /// <param name="manualGivesNoValue">Manual, section and revision that were looked into and give no value.</param>
    /// <param name="thread">Such as <c>3/8-24</c>.</param>
    public static Answer<TorqueTarget> FromTable(string? manualGivesNoValue, string thread, NutLoad load)
    {
        var refusals = new List<Refusal>();
        if (string.IsNullOrWhiteSpace(manualGivesNoValue))
            refusals.Add(new("manual-silence-not-cited", "The standard table may be used only when the manual gives no value: name the manual, section and revision that were looked into."));
        var row = TorqueTable.Find(thread, load);
        if (row is null)
            refusals.Add(new("thread-not-in-table", $"The table has no thread {thread}; it has {string.Join(", ", TorqueTable.Threads)}."));
        if (refusals.Count > 0 || row is null)
            return refusals;
        var estimated = row.Estimated ? ", marked estimated in the table" : "";
        return new TorqueTarget(row.Least, row.Greatest, false, Lubrication.Dry, TurnedPart.Nut,
            $"{TorqueTable.Source}, {row.Thread}, {Wire.Word(load)} nut{estimated}; no value in {manualGivesNoValue!.Trim()}");
    }

    /// <summary>
    /// The figure on file with an eccentric. Refused as <c>manual-gives-no-value</c> when the file has none: then the table
    /// may be opened by <see cref="FromTable"/>.
    /// </summary>
    public static Answer<TorqueTarget> OnFile(FastenerOnFile fastener, string? approvedData)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        if (fastener.TorqueInLb is not { } range)
            return new Refusal("manual-gives-no-value", $"No torque is on file for {fastener.Thread}: look into the manual, and only if it gives none use the standard table.");
        return FromManual(approvedData ?? "", Torque.FromPoundForceInches(range.Least), Torque.FromPoundForceInches(range.Greatest), fastener.IncludesPrevailing, fastener.Lubrication, fastener.Turned);
    }
}
