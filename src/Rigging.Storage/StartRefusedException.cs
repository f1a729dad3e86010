namespace Rigging.Storage;

/// <summary>Something about the machine or the options stops the program; the message tells the person what and what is wanted.</summary>
public sealed class StartRefusedException(string message) : Exception(message);
