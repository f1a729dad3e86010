using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Tests;

/// <summary>Every stage × entry × role, against a table that people wrote.</summary>
public class MoveTableTests
{
    static readonly Authority[] Roles = Enum.GetValues<Authority>();

    static readonly Dictionary<Stage, Ledger> Walked = Enum.GetValues<Stage>().ToDictionary(stage => stage, School.At);

    // Somebody who holds one authority only, took no part in anything so far, and has every certificate in order.
    static Person Only(Authority role) => School.Someone(70 + (int)role, [role], "private-pilot", "mechanic-airframe");

    static Ledger At(MovesOnPaper.Cell cell)
    {
        var ledger = cell.At is { } stage ? Walked[stage] : School.Empty;
        // Only what waits can go on.
        return cell.Entry == "resumed" && cell.To is not null ? ledger.Do(School.Mechanic, MovesOnPaper.Example("waiting")) : ledger;
    }

    static Facts Surroundings(MovesOnPaper.Cell cell, Facts facts) =>
        cell.Entry == "joined" ? facts with { OtherSquawks = [new(School.Other, 7, FlightStatus.Held)] } : facts;

    public static TheoryData<string> Entries => [.. MovesOnPaper.Cells.Select(cell => cell.Entry).Distinct()];

    [Theory, MemberData(nameof(Entries))]
    public void Every_entry_at_every_stage_by_every_role_moves_as_written_or_is_refused(string entry)
    {
        foreach (var cell in MovesOnPaper.Cells.Where(cell => cell.Entry == entry))
            foreach (var role in Roles) Check(cell, role);
    }

    static void Check(MovesOnPaper.Cell cell, Authority role)
    {
        var (ledger, fact, case_) = (At(cell), MovesOnPaper.Example(cell.Entry), $"{cell} by {role}");
        Entry[] before = [.. ledger.Entries];
        Assert.True(ledger.State.Stage == cell.At, case_);

        var decision = School.Try(ledger, Only(role), fact, facts => Surroundings(cell, facts));

        switch (decision)
        {
            case Decision.Accepted { Entry: var added }:
                Assert.True(cell.To is not null && cell.By.Contains(role), $"{case_}: accepted, but the table says no.");
                Assert.True(ledger.With(added).State.Stage == cell.To, $"{case_}: leads to {ledger.With(added).State.Stage}, written is {cell.To}.");
                Assert.Equal((ledger.Length + 1, role, Only(role).Id), (added.Sequence, added.As, added.By));
                break;
            case Decision.Refused { Broken: var broken }:
                Assert.True(cell.To is null || !cell.By.Contains(role), $"{case_}: refused, {string.Join("; ", broken.Select(b => b.Sentence))}");
                Assert.True(cell.To is null ? broken is [{ Code: "wrong-stage" }] : broken is [{ Code: "no-authority" }], $"{case_}: {string.Join(", ", broken.Select(b => b.Code))}");
                break;
        }
        Assert.Equal(before, ledger.Entries);
    }

    [Theory, MemberData(nameof(Entries))]
    public void What_the_page_greys_out_is_what_is_refused(string entry)
    {
        foreach (var cell in MovesOnPaper.Cells.Where(cell => cell.Entry == entry))
            foreach (var role in Roles)
            {
                var facts = Surroundings(cell, School.Facts(Only(role)));
                var blocked = Squawk.WhatBlocks(MovesOnPaper.Example(entry).GetType(), At(cell), facts);
                Assert.True(blocked.Count == 0 == cell.By.Contains(role), $"{cell} by {role}: {string.Join(", ", blocked.Select(b => b.Code))}");
            }
    }

    [Fact]
    public void The_written_table_covers_every_kind_and_every_stage()
    {
        Assert.Equal(EntryCodec.Kinds.Order(), MovesOnPaper.Cells.Select(cell => cell.Entry.Split(',')[0]).Distinct().Order());
        foreach (var row in MovesOnPaper.Cells.GroupBy(cell => cell.Entry))
            Assert.Equal([null, .. Enum.GetValues<Stage>()], row.Select(cell => cell.At));
    }

    [Fact]
    public void Every_row_of_the_program_s_table_is_written_down_too() => Assert.All(MoveTable.Rows, row =>
        Assert.All(row.At.Count == 0 ? [null] : row.At.Cast<Stage?>(), stage =>
            Assert.Contains(MovesOnPaper.Cells, cell => cell.To is not null && cell.At == stage && cell.Entry == EntryCodec.Kinds.Single(kind => EntryCodec.TypeOf(kind) == row.Kind))));

    [Fact]
    public void Every_stage_can_be_reached_from_a_report() =>
        Assert.Equal(Enum.GetValues<Stage>(), Reachable(Stage.Reported).Order());

    [Fact]
    public void Every_open_stage_has_a_way_to_an_end() => Assert.All(Enum.GetValues<Stage>().Where(stage => stage.IsOpen()), stage =>
        Assert.Contains(Reachable(stage), reached => !reached.IsOpen()));

    [Fact]
    public void Nothing_but_a_note_a_photograph_a_corrected_total_time_or_another_look_at_a_torque_follows_an_end() => Assert.All(MovesOnPaper.Cells.Where(cell => cell.At is { } at && !at.IsOpen()), cell =>
    {
        Assert.Equal(cell.Entry is "note" or "photograph" or "total-time-correction" || (cell.Entry == "torque-recheck" && cell.At is Stage.Closed or Stage.WithinLimitsMonitored), cell.To is not null);
        if (cell.To is { } to) Assert.Equal(cell.At, to);
    });

    [Fact]
    public void From_the_first_turned_bolt_only_inspection_approval_and_flight_lead_out()
    {
        foreach (var (stage, next) in ((Stage, Stage[])[])
        [
            (Stage.InWork, [Stage.AwaitingInspection]),
            (Stage.AwaitingInspection, [Stage.AwaitingApproval, Stage.InWork]),
            (Stage.AwaitingApproval, [Stage.ApprovedPassengersBarred, Stage.InWork]),
            (Stage.ApprovedPassengersBarred, [Stage.CheckFlightLogged, Stage.AwaitingApproval, Stage.InWork]),
        ])
            Assert.Equal(next.Order(), Next(stage).Where(to => to != stage).Distinct().Order());
    }

    [Fact]
    public void The_acts_that_need_a_signature_are_signed() => Assert.Equal(
        ["approval", "check-flight", "closing", "independent-inspection", "no-fault-found", "within-limits", "work-done"],
        EntryCodec.Kinds.Where(kind => MoveTable.IsSigned(EntryCodec.TypeOf(kind))).Order());

    static IEnumerable<Stage> Next(Stage stage) => MovesOnPaper.Cells.Where(cell => cell.At == stage && cell.To is not null).Select(cell => cell.To!.Value);

    static HashSet<Stage> Reachable(Stage from)
    {
        HashSet<Stage> seen = [from];
        for (Stage[] edge = [from]; edge.Length > 0; edge = [.. edge.SelectMany(Next).Distinct().Where(seen.Add)]) { }
        return seen;
    }
}
