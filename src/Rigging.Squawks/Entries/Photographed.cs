namespace Rigging.Squawks.Entries;

/// <summary>When a photograph of the work was taken.</summary>
public enum PhotoOf { BeforeWork, AfterWork, SomethingFound }

/// <summary>A photograph taken at the aircraft: settings, marks, a torque stripe, what was found.</summary>
/// <param name="Sha256">Of the picture as it is kept, lower-case hexadecimal: it cannot be exchanged.</param>
/// <param name="Caption">What is to be seen, for whoever cannot see it too.</param>
public sealed record Photographed(string Sha256, PhotoOf Of, string Caption) : Fact;
