using NodaTime;

namespace Rigging.Web.Desk;

/// <summary>When something was done, as typed where it is entered late.</summary>
static class LateEntry
{
    public const string On = "happenedOn", At = "happenedTime";

    /// <summary>Null when nothing is typed: then it is entered as it happens.</summary>
    /// <param name="part">What the form's fields begin with; empty when they begin with nothing.</param>
    public static Instant? Read(TypedFields fields, Typed typed, DateTimeZone zone, string part = "")
    {
        if (fields.Text(part + On) is null && fields.Text(part + At) is null) return null;
        var day = typed.Date(fields[part + On], part + On, Say.On);
        var time = typed.Time(fields[part + At], part + At, Say.AtAbout);
        return typed.Ok ? day.At(time).InZoneLeniently(zone).ToInstant() : null;
    }

    /// <summary>The day whose calibration counts; <paramref name="today"/> until another one is readable.</summary>
    public static LocalDate Day(TypedFields fields, LocalDate today, string part = "")
    {
        var typed = new Typed();
        var day = typed.Date(fields[part + On], part + On, Say.On);
        return typed.Ok ? day : today;
    }
}
