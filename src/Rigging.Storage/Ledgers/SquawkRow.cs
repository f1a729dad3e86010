using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Storage.Ledgers;

/// <summary>What lists and searches need of a squawk: written with every entry, and always equal to the fold of its ledger.</summary>
public sealed class SquawkRow
{
    const int SummaryLength = 160;

    public required SquawkId Id { get; init; }

    /// <summary>Counts from 1 at this school; people see "S-12".</summary>
    public int Number { get; private set; }

    public AircraftId AircraftId { get; private set; }
    public PersonId ReporterId { get; private set; }
    public Stage Stage { get; private set; }

    /// <summary>What this squawk alone lets the aircraft do; the aircraft has the worst of all its squawks.</summary>
    public FlightStatus FlightStatus { get; private set; }

    public int Round { get; private set; }

    /// <summary>Number of entries: what a page saw, and what an append is checked against.</summary>
    public int Length { get; private set; }

    public byte[] HeadHash { get; private set; } = [];

    /// <summary>The beginning of the pilot's own words.</summary>
    public string Summary { get; private set; } = "";

    /// <summary>What to do next, as a sentence; null when the squawk is over.</summary>
    public string? NextAct { get; private set; }

    /// <summary>The kind of entry that does it, such as <c>ground-check</c>.</summary>
    public string? NextKind { get; private set; }

    /// <summary>Who may do it.</summary>
    public IReadOnlyList<Authority> NextAuthorities { get; private set; } = [];

    public Instant OpenedAt { get; private set; }
    public Instant UpdatedAt { get; private set; }

    public static SquawkRow Of(Ledger ledger)
    {
        var row = new SquawkRow { Id = ledger.Id };
        row.Show(ledger);
        return row;
    }

    /// <summary>Takes on what the ledger now proves.</summary>
    public void Show(Ledger ledger)
    {
        var state = ledger.State;
        var report = state.Report ?? throw new InvalidOperationException($"The ledger of {ledger.Id} does not begin with a report.");
        var next = state.Stage!.Value.IsOpen() ? Rigging.Squawks.Ledgers.NextAct.Of(state) : null;
        (Number, AircraftId, ReporterId) = (report.Number, report.Aircraft, ledger.Entries[0].By);
        (Stage, FlightStatus, Round) = (state.Stage.Value, state.FlightStatus, state.Round);
        (Length, HeadHash) = (ledger.Length, ledger.Head ?? throw new InvalidOperationException($"The ledger of {ledger.Id} is not read from where it is stored."));
        Summary = Beginning(GroundingQuestions.Complaint(report));
        NextAct = next?.Sentence;
        NextKind = next is null ? null : EntryCodec.Kinds.First(kind => EntryCodec.TypeOf(kind) == next.Kind);
        NextAuthorities = next?.By ?? [];
        (OpenedAt, UpdatedAt) = (ledger.Entries[0].At, ledger.Entries[^1].At);
    }

    /// <summary>Where this row says something else than its ledger does.</summary>
    /// <remarks>
    /// <c>Newer</c>: another version of the program may have said it so, and the ledger's word is taken at the next upgrade: the
    /// sentences, and a status that now bars more than it did. Less is never taken over in passing.
    /// </remarks>
    /// <param name="proved">What the ledger proves.</param>
    internal IEnumerable<(string What, object? Says, object? Proved, bool Newer)> Differences(SquawkRow proved)
    {
        (string What, object? Says, object? Proved, bool Newer)[] all =
        [
            ("number", Number, proved.Number, false),
            ("aircraft", AircraftId, proved.AircraftId, false),
            ("reporter", ReporterId, proved.ReporterId, false),
            ("stage", Stage, proved.Stage, false),
            ("flight status", FlightStatus, proved.FlightStatus, proved.FlightStatus > FlightStatus),
            ("round", Round, proved.Round, false),
            ("opened at", OpenedAt, proved.OpenedAt, false),
            ("updated at", UpdatedAt, proved.UpdatedAt, false),
            ("summary", Summary, Columns.Storable(proved.Summary), true),
            ("next act", NextAct, proved.NextAct is { } act ? Columns.Storable(act) : null, true),
            ("kind of the next act", NextKind, proved.NextKind, true),
            ("whose turn it is", string.Join(", ", NextAuthorities), string.Join(", ", proved.NextAuthorities), true),
        ];
        return all.Where(one => !Equals(one.Says, one.Proved));
    }

    static string Beginning(string words)
    {
        if (words.Length <= SummaryLength)
            return words;
        var cut = SummaryLength - 1;
        return words[..(char.IsHighSurrogate(words[cut - 1]) ? cut - 1 : cut)].TrimEnd() + "…";
    }
}

sealed class SquawkTable : IEntityTypeConfiguration<SquawkRow>
{
    public void Configure(EntityTypeBuilder<SquawkRow> table)
    {
        table.ToTable("squawk");
        table.HasIndex(squawk => squawk.Number).IsUnique();
        table.HasIndex(squawk => squawk.AircraftId);
        table.Property(squawk => squawk.Summary).HasConversion(Columns.TypedText);
        table.Property(squawk => squawk.NextAct).HasConversion(Columns.TypedText!);
        table.Property(squawk => squawk.NextAuthorities).HasConversion(Columns.Authorities, Columns.AuthoritiesComparer).HasColumnType("text[]");
    }
}
