using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using NodaTime;

namespace Rigging.Web.SignIn;

/// <summary>Slows down an address from which wrong passwords keep coming: each further one doubles the time until the next try counts.</summary>
/// <remarks>In this host's memory: a restart forgets. What must not be forgotten, the lock of an account, is in the database.</remarks>
public sealed class Doorstep(IClock clock)
{
    /// <summary>Wrong tries that cost nothing. Everybody on this machine shares its address.</summary>
    public const int FreeTries = 10, FreeTriesHere = 50;

    static readonly Duration Longest = Duration.FromMinutes(1);
    static readonly Duration Forgotten = Duration.FromMinutes(15);
    const int MostRemembered = 10_000;

    readonly ConcurrentDictionary<string, (int Wrong, Instant Last)> remembered = new();

    /// <summary>How long an address must wait before a password from it is looked at.</summary>
    public Duration Wait(IPAddress? from)
    {
        var now = clock.GetCurrentInstant();
        if (!remembered.TryGetValue(Key(from), out var seen) || now - seen.Last >= Forgotten) return Duration.Zero;
        var over = seen.Wrong - (IsHere(from) ? FreeTriesHere : FreeTries);
        if (over < 0) return Duration.Zero;
        var wait = Duration.Min(Duration.FromSeconds(1L << Math.Min(over, 10)), Longest) - (now - seen.Last);
        return Duration.Max(wait, Duration.Zero);
    }

    public void Wrong(IPAddress? from)
    {
        var now = clock.GetCurrentInstant();
        if (remembered.Count >= MostRemembered)
            foreach (var (key, seen) in remembered)
                if (now - seen.Last >= Forgotten) remembered.TryRemove(key, out _);
        remembered.AddOrUpdate(Key(from), (1, now), (_, seen) => now - seen.Last >= Forgotten ? (1, now) : (seen.Wrong + 1, now));
    }

    /// <summary>Whether a request comes from this machine: an in-process caller has no address.</summary>
    public static bool IsHere(IPAddress? from) => from is null || IPAddress.IsLoopback(from);

    // Whoever has one IPv6 address has a whole /64 of them.
    public static string Key(IPAddress? from) => from switch
    {
        null => "here",
        _ when IPAddress.IsLoopback(from) => "here",
        { IsIPv4MappedToIPv6: true } => from.MapToIPv4().ToString(),
        { AddressFamily: AddressFamily.InterNetworkV6 } => Convert.ToHexString(from.GetAddressBytes()[..8]),
        _ => from.ToString(),
    };
}
