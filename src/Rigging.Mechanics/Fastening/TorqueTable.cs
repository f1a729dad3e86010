using System.Text.Json;
using UnitsNet;

namespace Rigging.Mechanics.Fastening;

/// <summary>Whether the nut holds a bolt that is pulled (tension, a thick nut) or one that is loaded across (shear, a thin nut).</summary>
public enum NutLoad { Tension, Shear }

/// <summary>
/// The standard torque tables, for use only where the aeroplane's manual gives no value: FAA AC 43.13-1B (9/8/98), tables
/// 7-1 and 7-2, from the data file beside this class.
/// </summary>
/// <remarks>The values are for dry, oil-free, cadmium-plated threads and contain no prevailing torque.</remarks>
public static class TorqueTable
{
    static readonly Tables File = Load();

    /// <summary>Where the torques are from.</summary>
    public static string Source => File.Torque.Source;

    /// <summary>The threads and bearing faces the torques hold for.</summary>
    public static string Condition => File.Torque.Condition;

    /// <summary>Such as <c>3/8-24</c>, fine series first.</summary>
    public static IReadOnlyList<string> Threads { get; } = [.. File.TorqueRows.Select(row => row.Thread)];

    /// <summary>Null when the table has no such thread.</summary>
    public static TorqueTableRow? Find(string thread, NutLoad load)
    {
        ArgumentNullException.ThrowIfNull(thread);
        if (File.TorqueRows.FirstOrDefault(row => row.Thread == Plain(thread)) is not { } row)
            return null;
        return load == NutLoad.Tension
            ? new(row.Thread, InLb(row.TensionInLb[0]), InLb(row.TensionInLb[1]), InLb(row.TensionMostInLb), false)
            : new(row.Thread, InLb(row.ShearInLb[0]), InLb(row.ShearInLb[1]), InLb(row.ShearMostInLb), row.ShearEstimated);
    }

    /// <summary>
    /// Least prevailing torque of a self-locking nut that is used again (table 7-2); null for sizes the table does not
    /// have, which is everything below 7/16 in: there the nut's own data decide.
    /// </summary>
    public static Torque? LeastPrevailing(string thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return File.PrevailingRows.FirstOrDefault(row => row.Thread == Plain(thread)) is { } row ? InLb(row.LeastInLb) : null;
    }

    static string Plain(string thread) => thread.Trim().TrimStart('#');

    static Torque InLb(double value) => Torque.FromPoundForceInches(value);

    static Tables Load()
    {
        using var stream = typeof(TorqueTable).Assembly.GetManifestResourceStream("torque-tables.json")!;
        return JsonSerializer.Deserialize<Tables>(stream, JsonSerializerOptions.Web)!;
    }

    sealed record Provenance(string Source, string Condition, string Note);

    sealed record Row(string Thread, string Series, double[] TensionInLb, double[] ShearInLb, double TensionMostInLb, double ShearMostInLb, bool ShearEstimated);

    sealed record Prevailing(string Thread, string Series, double LeastInLb);

    sealed record Tables(Provenance Torque, Row[] TorqueRows, Provenance PrevailingTable, Prevailing[] PrevailingRows);
}

/// <summary>One size of the table.</summary>
/// <param name="Least">Recommended, without prevailing torque.</param>
/// <param name="Greatest">Recommended, without prevailing torque.</param>
/// <param name="NeverMore">Greatest that the table allows at all; no target, only a bound on what a bolt may have suffered.</param>
/// <param name="Estimated">The table itself marks the value as estimated.</param>
public sealed record TorqueTableRow(string Thread, Torque Least, Torque Greatest, Torque NeverMore, bool Estimated);
