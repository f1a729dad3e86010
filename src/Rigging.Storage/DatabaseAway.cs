using System.Net.Sockets;
using Npgsql;

namespace Rigging.Storage;

/// <summary>Tells a database that is out of reach, or out of room, from a bug.</summary>
public static class DatabaseAway
{
    /// <summary>What to tell a person; null when the error is something else.</summary>
    public static string? Why(Exception? error) => error switch
    {
        null => null,
        PostgresException { SqlState: PostgresErrorCodes.DiskFull } => "The database's disk is full.",
        // Class 53: out of memory, connections, other resources.
        PostgresException { SqlState: ['5', '3', ..] } => "The database is out of room for another request.",
        // A fatal error ends the connection or does not let one begin; 08: connection lost; 58: input or output failed.
        PostgresException { InvariantSeverity: "FATAL" or "PANIC" } or PostgresException { SqlState: ['0', '8', ..] or ['5', '8', ..] } => "The database does not answer.",
        PostgresException => null,
        NpgsqlException { InnerException: SocketException or IOException or TimeoutException or null } => "The database does not answer.",
        _ => Why(error.InnerException),
    };

    public static bool Is(Exception error) => Why(error) is not null;
}
