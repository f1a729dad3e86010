namespace Rigging.Web.Look;

/// <summary>What a status shape can say of an aircraft.</summary>
public enum Status { MayFly, Limits, Grounded, CrewOnly, Waiting }
