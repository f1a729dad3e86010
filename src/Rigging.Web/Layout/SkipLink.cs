using Microsoft.AspNetCore.Components;

namespace Rigging.Web.Layout;

static class SkipLink
{
    /// <summary>The page's own address with its fragment: with a base element a bare "#main" would lead to the start page.</summary>
    public static string To(NavigationManager navigation) => $"{new Uri(navigation.Uri).PathAndQuery}#main";
}
