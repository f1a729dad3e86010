namespace Rigging.Squawks.Entries;

/// <summary>When a photograph of the work was taken.</summary>
public enum PhotoOf { BeforeWork, AfterWork, SomethingFound, SignedPaper }

/// <summary>Of an act signed on paper and here: which of the two counts, should they differ.</summary>
public enum Original { ThePaper, ThisLedger }

/// <summary>A photograph taken at the aircraft: settings, marks, a torque stripe, what was found.</summary>
/// <param name="Sha256">Of the picture as it is kept, lower-case hexadecimal: it cannot be exchanged.</param>
/// <param name="Caption">What is to be seen, for whoever cannot see it too.</param>
/// <param name="PaperOf">Of a signed paper: sequence of the signed entry that it carries; null otherwise.</param>
/// <param name="Original">Of a signed paper; null otherwise.</param>
public sealed record Photographed(string Sha256, PhotoOf Of, string Caption, int? PaperOf = null, Original? Original = null) : Fact;
