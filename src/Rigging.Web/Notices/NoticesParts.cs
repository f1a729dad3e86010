using NodaTime;
using Rigging.Storage.Ledgers;

namespace Rigging.Web.Notices;

static class NoticesParts
{
    public static IServiceCollection AddNotices(this IServiceCollection services)
    {
        services.AddSingleton<Outbox>();
        services.AddSingleton(all => new Postman(
            MailSettings.Read(all.GetRequiredService<IConfiguration>()), all.GetRequiredService<Outbox>(),
            all.GetRequiredService<LedgerListener>(), all.GetRequiredService<IClock>(), all.GetRequiredService<ILogger<Postman>>()));
        services.AddHostedService(all => all.GetRequiredService<Postman>());
        return services;
    }
}
