using Rigging.Squawks.People;

namespace Rigging.Storage.Ledgers;

/// <summary>Something in the stored ledgers that cannot be right.</summary>
/// <param name="Number">The squawk's number, as far as it is known.</param>
/// <param name="Sequence">The first bad entry.</param>
public sealed record LedgerFault(SquawkId Squawk, int? Number, int Sequence, string What)
{
    public override string ToString() => $"{(Number is { } number ? $"S-{number}" : Squawk)}, entry {Sequence}: {What}";
}

/// <summary>A seal that cannot be right.</summary>
public sealed record SealFault(int Number, string What)
{
    public override string ToString() => $"Seal {Number}: {What}";
}

/// <summary>What came of checking everything.</summary>
/// <param name="Entries">How many entries the ledgers hold.</param>
/// <param name="Seals">How many seals were compared.</param>
/// <param name="Pictures">How many pictures that entries name are there and whole.</param>
public sealed record AuditReport(int Ledgers, int Entries, int Seals, int Pictures, IReadOnlyList<LedgerFault> Faults, IReadOnlyList<SealFault> SealFaults)
{
    public bool Holds => Faults.Count == 0 && SealFaults.Count == 0;

    /// <summary>Every fault as a line, seals last.</summary>
    public IEnumerable<string> Lines => Faults.Select(fault => fault.ToString()).Concat(SealFaults.Select(fault => fault.ToString()));

    public string Summary => $"{Ledgers} ledgers with {Entries} entries, {Faults.Count} broken; {Seals} seals, {SealFaults.Count} broken.{(Pictures == 0 ? "" : $" {Pictures} pictures are whole.")}";

    public void Deconstruct(out int ledgers, out IReadOnlyList<LedgerFault> faults) => (ledgers, faults) = (Ledgers, Faults);
}
