using Rigging.Mechanics.Contract;

namespace Rigging.Web.Api;

/// <summary>Refusals of the API as problem details (RFC 9457). Faults go under <c>errors</c>: path, value seen, what was wanted.</summary>
static class Problem
{
    public static IResult Faulty(IReadOnlyList<Fault> faults) => Of(
        StatusCodes.Status400BadRequest,
        "faulty-request",
        "The request is not right",
        faults.Count == 1 ? "One field is not right; it is named under errors." : $"{faults.Count} fields are not right; each is named under errors.",
        faults);

    public static IResult Faulty(string path, string? seen, string wanted) => Faulty([new(path, seen, wanted)]);

    public static IResult Of(int status, string code, string title, string detail, IReadOnlyList<Fault>? faults = null) => Results.Problem(
        detail,
        statusCode: status,
        title: title,
        type: $"urn:rigging:problem:{code}",
        extensions: faults is null ? null : new Dictionary<string, object?> { ["errors"] = faults });
}
