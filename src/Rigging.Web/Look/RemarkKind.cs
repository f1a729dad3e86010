namespace Rigging.Web.Look;

/// <summary>How weighty a remark is.</summary>
public enum RemarkKind { Note, Good, Caution, Stop }
