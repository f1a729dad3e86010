using Microsoft.AspNetCore.Components;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

/// <summary>A page that holds the report form: what was typed, what was wrong, and where it leads.</summary>
public abstract class ReportingPage : ComponentBase
{
    [Inject] protected FileReport FileReport { get; set; } = null!;
    [Inject] protected CockpitNews News { get; set; } = null!;
    [Inject] protected NavigationManager Navigation { get; set; } = null!;
    [CascadingParameter] public HttpContext Context { get; set; } = null!;

    protected IReadOnlyList<ReportableAircraft> Fleet { get; private set; } = [];

    protected IReadOnlyList<BrokenRule> Errors { get; private set; } = [];

    protected TypedFields Typed { get; private set; } = new();

    protected Lately? Lately { get; set; }

    protected string DraftKey => FileReport.DraftKey(Lately?.Registration);

    protected override async Task OnInitializedAsync()
    {
        Fleet = await FileReport.Show(Actor.PersonOf(Context.User) is null, Context.RequestAborted);
        if (Context.Request.HasFormContentType) Typed = TypedFields.Of(Context.Request.Form);
    }

    protected async Task Send()
    {
        // Once begun, filing is not given up because a phone hangs up.
        var filed = await FileReport.Run(Typed, Context.Request.Form.Files, Context, DraftKey, Fleet, Lately, CancellationToken.None);
        Errors = filed.Errors;
        if (filed.Id is { } id) Navigation.NavigateTo($"receipt/{id}?done={Uri.EscapeDataString(DraftKey)}");
    }
}
