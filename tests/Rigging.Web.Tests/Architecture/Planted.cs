// Violations on purpose: the architecture rules must catch every one of them.
namespace Planted.OpensAFile
{
    public static class Plant { public static bool There => System.IO.File.Exists("x"); }
}

namespace Planted.OpensASocket
{
    public static class Plant { public static System.Net.Http.HttpClient Client => new(); }
}

namespace Planted.OpensADatabase
{
    public static class Plant { public static Npgsql.NpgsqlConnection Connection => new(); }
}

namespace Planted.UsesEntityFramework
{
    public static class Plant { public static Microsoft.EntityFrameworkCore.EntityState State => Microsoft.EntityFrameworkCore.EntityState.Added; }
}

namespace Planted.ReadsAClock
{
    public static class Plant { public static NodaTime.Instant Now => NodaTime.SystemClock.Instance.GetCurrentInstant(); }
}

namespace Planted.UsesSquawks
{
    public static class Plant { public static Rigging.Squawks.Ledgers.Stage Stage => Rigging.Squawks.Ledgers.Stage.Called; }
}

namespace Planted.UsesStorage
{
    public static class Plant { public static System.Type Type => typeof(Rigging.Storage.Ledgers.LedgerStore); }
}

namespace Planted.UsesWeb
{
    public static class Plant { public static Rigging.Web.Desk.Typed Typed => new(); }
}

namespace Planted.ShowsARow
{
    public static class Plant { public static object? Row(Rigging.Storage.Ledgers.SquawkRow row) => row.Summary; }
}

namespace Planted.PageWithADatabase
{
    public sealed class Plant : Microsoft.AspNetCore.Components.ComponentBase
    {
        [Microsoft.AspNetCore.Components.Inject] public Rigging.Storage.RiggingDb? Database { get; set; }
    }
}

namespace Planted.ReachesIntoAStep
{
    public static class Plant { public static Rigging.Web.SignOff.SignForm Form => new(); }
}
