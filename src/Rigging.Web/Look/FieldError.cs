namespace Rigging.Web.Look;

/// <summary>What was wrong with one field: its posted name (empty for the form as a whole) and a sentence saying the value seen and what was wanted.</summary>
public sealed record FieldError(string Name, string Message);
