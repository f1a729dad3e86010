using System.Globalization;
using System.Threading.RateLimiting;
using Rigging.Web.SignIn;

namespace Rigging.Web.Security;

/// <summary>How much one address may ask. This machine may ask so much that only a runaway program notices.</summary>
static class Limits
{
    /// <summary>Requests at once, and each second after that.</summary>
    public static readonly (int Burst, int PerSecond) Here = (20_000, 5_000), Elsewhere = (600, 30), ApiElsewhere = (60, 2);

    public static IServiceCollection AddLimits(this IServiceCollection services) => services.AddRateLimiter(limiter =>
    {
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
            if (rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var wait))
                rejected.HttpContext.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);
            return ValueTask.CompletedTask;
        };
    });
}
