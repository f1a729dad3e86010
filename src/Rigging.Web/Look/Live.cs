using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;

namespace Rigging.Web.Look;

/// <summary>How a page becomes interactive: <c>@rendermode Live.Page</c>. Pages without it are plain HTML.</summary>
public static class Live
{
    /// <summary>No prerendering: a page that loads a ledger would load it twice.</summary>
    public static readonly IComponentRenderMode Page = new InteractiveServerRenderMode(prerender: false);
}
