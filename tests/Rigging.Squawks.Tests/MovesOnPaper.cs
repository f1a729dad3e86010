using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Tests;

/// <summary>The table of moves as people wrote it down, read from Data/moves.md.</summary>
static class MovesOnPaper
{
    /// <param name="At">Null before the report.</param>
    /// <param name="To">Null where the entry has no place.</param>
    public sealed record Cell(string Entry, Stage? At, Stage? To, IReadOnlyList<Authority> By)
    {
        public override string ToString() => $"{Entry} at {At?.ToString() ?? "nothing yet"}";
    }

    public static IReadOnlyList<Cell> Cells { get; } = [.. Read()];

    static IEnumerable<Cell> Read()
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", "moves.md"));
        var stages = lines.Where(line => line.StartsWith("- `", StringComparison.Ordinal)).Select(line => line[3..].Split("` "))
            .ToDictionary(parts => parts[0], parts => Enum.TryParse<Stage>(parts[1], out var stage) ? stage : (Stage?)null);
        var rows = lines.Where(line => line.StartsWith('|')).Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries)).ToArray();
        foreach (var row in rows.Skip(2))
            foreach (var (column, cell) in rows[0].Zip(row).Skip(1))
                yield return cell.Split(' ') is [var to, var who]
                    ? new(row[0], stages[column], to == "=" ? stages[column] : stages[to], [.. who.Select(Who)])
                    : cell == "–" ? new(row[0], stages[column], null, []) : throw new FormatException($"{row[0]}, {column}: “{cell}”");
    }

    static Authority Who(char letter) => letter switch
    {
        'P' => Authority.Pilot,
        'O' => Authority.Office,
        'M' => Authority.Mechanic,
        'I' => Authority.Inspector,
        'C' => Authority.Certifier,
        'R' => Authority.Reporter,
        _ => throw new FormatException($"Nobody is “{letter}”."),
    };

    /// <summary>An entry of each row that nothing but stage and authority could stand in the way of.</summary>
    public static Fact Example(string entry) => entry switch
    {
        "report" => School.Report,
        "airworthiness-call" => new Called(Call.Grounded, "Nobody flies it until the fuel is dipped.", null),
        "ground-check" => School.Measured(Check.FlapDifference, 0.2),
        "evaluation-flight" => new EvaluationFlown(School.Today, School.Flight.TestPoints, null),
        "assessment" => new Assessed("{}", "{}", "0.1", "1", "st2", 1),
        "correction" => School.HalfAFlat,
        "correction-withdrawn" => new CorrectionWithdrawn("The fork is seized; the part is on order."),
        "work-started" => new WorkStarted("Padded stand under the strut fitting.", null),
        "as-found" => School.Found,
        "torque-application" => School.Torque,
        "torque-recheck" => new TorqueRechecked(School.JustTorqued.Length, true, true, "Stripe in line, torque held at 190 in·lb."),
        "photograph" => new Photographed(School.PictureHash, PhotoOf.BeforeWork, "Left rear bushing before it was turned."),
        "work-handover" => new WorkHandedOver("Bolt in and torqued.", null),
        "work-done" => School.Done,
        "independent-inspection" => School.Inspection,
        "independent-inspection, failed" => School.Inspection with { Passed = false },
        "approval" => School.Approval,
        "check-flight" => School.Flight,
        "verdict" => School.Verdict(VerdictWord.Accepted),
        "closing" => new Closed("The fuller right tank explains what is left."),
        "round-opened" => new RoundOpened("Still left-wing heavy."),
        "waiting" => new Waiting(WaitingFor.Weather, "Smooth air wanted."),
        "resumed" => new Resumed("Smooth this morning."),
        "note" => new Noted("The pilot rang.", null),
        "total-time-correction" => new TotalTimeCorrected(1250.5, "Two figures were exchanged."),
        "no-fault-found" => new NoFaultFound("Flown and surveyed; nothing found.", true),
        "within-limits" => new WithinLimits("0.3 °/s at 95 kt.", "School limit 0.5 °/s.", true),
        "joined" => School.Join,
        "handed-over" => new HandedOver("avionics shop", "The turn indicator was at fault."),
        _ => throw new ArgumentOutOfRangeException(nameof(entry), entry, "No example of this entry."),
    };
}
