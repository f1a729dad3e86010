using NodaTime;

namespace Rigging.Web.Demo;

/// <summary>Stands at the moment of the act that is being told.</summary>
sealed class StoryClock : IClock
{
    public Instant Now { get; set; }

    public Instant GetCurrentInstant() => Now;
}
