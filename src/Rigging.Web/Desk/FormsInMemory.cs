using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Options;

namespace Rigging.Web.Desk;

/// <summary>A form with pictures is kept in the temporary folder while it is read. Where that is full or closed it is read in memory, so that no report is lost to a disk that has nothing to do with it.</summary>
static class FormsInMemory
{
    /// <summary>Before anything reads a form.</summary>
    public static void UseFormsInMemory(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        if (http.Request.HasFormContentType && http.Request.ContentType!.StartsWith("multipart/", StringComparison.OrdinalIgnoreCase))
        {
            var usual = http.RequestServices.GetRequiredService<IOptions<FormOptions>>().Value;
            if (!TemporaryFolderTakes(http.Request.ContentLength ?? usual.MultipartBodyLengthLimit))
                http.Features.Set<IFormFeature>(new FormFeature(http.Request, new FormOptions
                {
                    MemoryBufferThreshold = int.MaxValue,
                    MultipartBodyLengthLimit = usual.MultipartBodyLengthLimit,
                    ValueCountLimit = usual.ValueCountLimit,
                    ValueLengthLimit = usual.ValueLengthLimit,
                    KeyLengthLimit = usual.KeyLengthLimit,
                }));
        }
        return next(http);
    });

    static bool TemporaryFolderTakes(long bytes)
    {
        try
        {
            // The same folder as the framework's; the room is asked for, nothing is written.
            var folder = Environment.GetEnvironmentVariable("ASPNETCORE_TEMP") ?? Path.GetTempPath();
            using var probe = new FileStream(Path.Combine(folder, Path.GetRandomFileName()), new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                Options = FileOptions.DeleteOnClose,
                PreallocationSize = bytes,
            });
            return true;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
