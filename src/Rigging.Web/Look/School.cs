namespace Rigging.Web.Look;

/// <summary>Whose installation this is; cascades to every page for the masthead.</summary>
public sealed record School(string Name);
