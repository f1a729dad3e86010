namespace Rigging.Web.Api;

/// <summary>What programs may ask of this host.</summary>
static class ApiParts
{
    public static IServiceCollection AddApi(this IServiceCollection services) => services.AddApiDescription();

    public static void MapApi(this IEndpointRouteBuilder app)
    {
        app.MapAssessments();
        app.MapOpenApi("/openapi/{documentName}.json").AllowAnonymous();
    }
}
