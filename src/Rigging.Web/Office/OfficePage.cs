using Microsoft.AspNetCore.Components;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Office;

/// <summary>A plain page of the office: what is on record, and a form below it. What was typed comes back on every error.</summary>
public abstract class OfficePage : ComponentBase
{
    [Inject] protected OfficeBooks Kept { get; set; } = null!;
    [Inject] NavigationManager Navigation { get; set; } = null!;
    [CascadingParameter] HttpContext? Context { get; set; }

    protected Books? Books { get; private set; }

    protected TypedFields Fields { get; private set; } = new();

    protected IReadOnlyList<FieldError> Errors { get; private set; } = [];

    protected bool Locked => Books?.Refused is not null;

    protected string? ErrorAt(string field) => Errors.FirstOrDefault(error => error.Name == field)?.Message;

    protected override async Task OnInitializedAsync()
    {
        Books = await Kept.Show();
        if (Context is { Request.HasFormContentType: true }) Fields = TypedFields.Of(await Context.Request.ReadFormAsync());
    }

    /// <summary>Enters what was typed and goes on to a page, this one if none is named; or shows everything that is wrong with it.</summary>
    protected async Task Take(Typed typed, Func<Task<IReadOnlyList<BrokenRule>>> enter, Func<string>? next = null)
    {
        var wrong = typed.Ok ? await enter() : typed.Errors;
        if (wrong.Count == 0)
        {
            Navigation.NavigateTo(next?.Invoke() ?? Navigation.ToBaseRelativePath(Navigation.Uri));
            return;
        }
        Show(wrong);
    }

    protected void Show(IReadOnlyList<BrokenRule> wrong) => Errors = [.. wrong.Select(rule => new FieldError(rule.Field ?? "", rule.Sentence))];

    /// <summary>What is on record, read once more after something was entered that leads nowhere else.</summary>
    protected async Task ReadAgain() => Books = await Kept.Show();

    protected string Needed(Typed typed, string field, string name, int most = 200)
    {
        var text = Fields.Text(field);
        if (text is null) typed.Wrong("text-missing", Gaps.Fill(Say.NothingEntered, name), field);
        else if (text.Length > most) typed.Wrong("text-too-long", Gaps.Fill(Say.CharactersAtMost, name, text.Length, most), field);
        return text ?? "";
    }
}
