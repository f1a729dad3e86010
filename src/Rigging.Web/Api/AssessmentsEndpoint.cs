using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Storage;
using Rigging.Web.Security;

namespace Rigging.Web.Api;

/// <summary>The assessment as a pure question: evidence in, answer out, nothing stored and nobody signed in.</summary>
static class AssessmentsEndpoint
{
    public const string Path = "/api/v1/assessments";

    public static async Task<IResult> Assess(HttpRequest http, IDbContextFactory<RiggingDb> databases, AssessmentTurns turns, CancellationToken ct)
    {
        // Read before a turn is taken: a slow sender keeps nobody waiting.
        var (json, problem) = await RequestBody.Read(http, ct);
        if (problem is not null) return problem;
        using var turn = await turns.Take(ct);
        if (!turn.IsAcquired)
        {
            Limits.SayWhen(http.HttpContext, turn);
            return Problem.Of(StatusCodes.Status429TooManyRequests, "busy", "Busy", "Too many assessments are asked for at once; ask again later.");
        }
        return await Answer(json!, databases, ct);
    }

    static async Task<IResult> Answer(string json, IDbContextFactory<RiggingDb> databases, CancellationToken ct)
    {
        var read = ContractReader.ReadRequest(json);
        if (!read.Ok) return Problem.Faulty(read.Faults);

        var request = read.Value;
        if (request.Airframe is { } written) return Answer(request, written);
        if (await OnFile(databases, request.AirframeId!, ct) is not { } airframe)
            return Problem.Faulty("$.airframeId", $"\"{request.AirframeId}\"", "the id of an airframe on file here, or an airframe written out");
        return ContractReader.Check(request, airframe) is { Count: > 0 } faults ? Problem.Faulty(faults) : Answer(request, airframe);
    }

    static IResult Answer(AssessmentRequest request, Airframe airframe) =>
        Results.Text(ContractWriter.Write(Assessor.Assess(request, airframe)), "application/json");

    /// <summary>The newest version; null when there is none, or none that this program can read.</summary>
    static async Task<Airframe?> OnFile(IDbContextFactory<RiggingDb> databases, string id, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var json = await db.Airframes.AsNoTracking().Where(row => row.Id == id).OrderByDescending(row => row.Version).Select(row => row.Json).FirstOrDefaultAsync(ct);
        return json is null ? null : ContractReader.ReadAirframe(json).Value;
    }

    public static void MapAssessments(this IEndpointRouteBuilder app)
    {
        app.MapPost(Path, Assess)
            .AllowAnonymous()
            .RequireRateLimiting(Limits.Assessments)
            .WithMetadata(new RequestSizeLimitAttribute(RequestBody.MostBytes + 1))
            .WithName("assess");
        app.Map(Path, (HttpResponse response) =>
        {
            response.Headers.Allow = HttpMethods.Post;
            return Problem.Of(StatusCodes.Status405MethodNotAllowed, "method", "Only POST here", $"An assessment is asked for by POST {Path}.");
        }).AllowAnonymous().ExcludeFromDescription();
        app.Map("/api/{**rest}", () => Problem.Of(StatusCodes.Status404NotFound, "no-such-address", "Nothing here", "The API is described at /openapi/v1.json."))
            .AllowAnonymous().ExcludeFromDescription();
    }
}
