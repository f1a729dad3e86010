using System.Net;

namespace Rigging.Web.Tests.SignIn;

[Collection(InTheHangar.Name)]
public sealed class SetUpTests(Hangar hangar)
{
    /// <summary>Asked many times over at once: a form that is taken away while it is being drawn fails only now and then.</summary>
    [Fact]
    public async Task A_school_that_is_set_up_has_no_such_page()
    {
        using var stranger = hangar.Site.Browser();

        var answers = await Task.WhenAll(Enumerable.Range(0, 60).Select(_ => stranger.Http.GetAsync(new Uri("/setup", UriKind.Relative), TestContext.Current.CancellationToken)));

        Assert.Equal([HttpStatusCode.NotFound], answers.Select(answer => answer.StatusCode).Distinct());
    }
}
