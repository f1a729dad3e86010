using Microsoft.AspNetCore.Components;

namespace Rigging.Web.Look;

/// <summary>
/// What every plain form part has. It renders ordinary HTML: it works in a posted form without a circuit, and in an
/// interactive page through <see cref="ValueChanged"/>. <see cref="Value"/> is the text as typed, right or wrong, so that nothing is lost on an error.
/// </summary>
public abstract class FormPart : ComponentBase
{
    /// <summary>The posted name; also makes the element's id.</summary>
    [Parameter, EditorRequired] public string Name { get; set; } = "";
    [Parameter, EditorRequired] public string Label { get; set; } = "";
    [Parameter] public string? Value { get; set; }
    [Parameter] public EventCallback<string?> ValueChanged { get; set; }
    [Parameter] public string? Help { get; set; }
    [Parameter] public string? Error { get; set; }

    /// <summary>A field that may stay empty says so; nothing else is marked.</summary>
    [Parameter] public bool Optional { get; set; }
    [Parameter] public bool Disabled { get; set; }

    /// <summary>Further HTML attributes for the input itself.</summary>
    [Parameter(CaptureUnmatchedValues = true)] public IReadOnlyDictionary<string, object>? Attributes { get; set; }

    protected string Id => IdOf(Name);
    protected string? HelpId => string.IsNullOrEmpty(Help) ? null : Id + "-help";
    protected string? ErrorId => string.IsNullOrEmpty(Error) ? null : Id + "-error";
    protected string? DescribedBy => (HelpId, ErrorId) is (null, null) ? null : $"{ErrorId} {HelpId}".Trim();
    protected string? Invalid => ErrorId is null ? null : "true";

    /// <summary>Letter by letter: what is computed from it follows at once, and a draft loses nothing with the connection.</summary>
    protected Task Typing(string? text) => ValueChanged.InvokeAsync(text);

    protected Task Changed(ChangeEventArgs change) => ValueChanged.InvokeAsync(change.Value?.ToString());

    /// <summary>The id of the field posted under a name: <c>Report.FuelLeft</c> becomes <c>report-fuelleft</c>.</summary>
    public static string IdOf(string name) =>
        string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')).Trim('-');
}
