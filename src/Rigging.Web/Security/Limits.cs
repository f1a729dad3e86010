using System.Globalization;
using System.Threading.RateLimiting;
using Rigging.Web.SignIn;

namespace Rigging.Web.Security;

/// <summary>How much one address may ask. This machine may ask so much that only a runaway program notices.</summary>
static class Limits
{
    /// <summary>Requests at once, and each second after that.</summary>
    public static readonly (int Burst, int PerSecond) Here = (20_000, 5_000), Elsewhere = (600, 30), ApiElsewhere = (60, 2);

    /// <summary>Of the assessments that anybody may ask for: half of the processors, so that pages go on answering.</summary>
    public const string Assessments = "assessments";

    public static readonly int AssessmentsAtOnce = Math.Max(1, Environment.ProcessorCount / 2);

    /// <summary>How many wait their turn; one address takes part with one that runs and these that wait.</summary>
    public const int AssessmentsWaiting = 16, AssessmentsWaitingOfOne = 2;

    static readonly TimeSpan AskAgain = TimeSpan.FromSeconds(5);

    public static IServiceCollection AddLimits(this IServiceCollection services) => services.AddSingleton<AssessmentTurns>().AddRateLimiter(limiter =>
    {
        // Each address waits in a row of its own, so that one that asks for a hundred stands behind nobody but itself.
        limiter.AddPolicy(Assessments, http => RateLimitPartition.GetConcurrencyLimiter(Doorstep.Key(http.Connection.RemoteIpAddress), _ => new()
        {
            PermitLimit = 1,
            QueueLimit = AssessmentsWaitingOfOne,
            QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
        }));
        limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(http =>
        {
            var from = http.Connection.RemoteIpAddress;
            var (who, limit) = Doorstep.IsHere(from) ? ("", Here)
                : http.Request.Path.StartsWithSegments("/api") ? ("api ", ApiElsewhere)
                : ("", Elsewhere);
            return RateLimitPartition.GetTokenBucketLimiter(who + Doorstep.Key(from), _ => new()
            {
                TokenLimit = limit.Burst,
                TokensPerPeriod = limit.PerSecond,
                ReplenishmentPeriod = TimeSpan.FromSeconds(1),
            });
        });
        limiter.OnRejected = (rejected, _) =>
        {
            SayWhen(rejected.HttpContext, rejected.Lease);
            return ValueTask.CompletedTask;
        };
    });

    /// <summary>When it is worth asking again, as far as that is known.</summary>
    public static void SayWhen(HttpContext http, RateLimitLease lease) => http.Response.Headers.RetryAfter =
        Math.Ceiling((lease.TryGetMetadata(MetadataName.RetryAfter, out var wait) ? wait : AskAgain).TotalSeconds).ToString(CultureInfo.InvariantCulture);
}

/// <summary>All addresses together: so many assessments are computed at once, and so many wait.</summary>
sealed class AssessmentTurns : IDisposable
{
    readonly ConcurrencyLimiter limiter = new(new()
    {
        PermitLimit = Limits.AssessmentsAtOnce,
        QueueLimit = Limits.AssessmentsWaiting,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    public ValueTask<RateLimitLease> Take(CancellationToken ct) => limiter.AcquireAsync(1, ct);

    public void Dispose() => limiter.Dispose();
}
