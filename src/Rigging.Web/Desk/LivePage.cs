using Microsoft.AspNetCore.Components;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Storage.Ledgers;

namespace Rigging.Web.Desk;

/// <summary>A page that stays open: it refreshes when something is recorded, says when the database is away, and goes on by itself when that is back.</summary>
public abstract class LivePage : ComponentBase, IDisposable
{
    [Inject] LedgerListener Listener { get; set; } = null!;
    [Inject] DatabaseWatch Watch { get; set; } = null!;

    /// <summary>Why nothing can be read or recorded now; null while the database answers.</summary>
    protected string? Away { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    protected abstract Task Look();

    /// <param name="squawk">Null: any may have changed.</param>
    protected virtual bool Concerns(SquawkId? squawk) => true;

    protected override void OnInitialized()
    {
        Listener.Changed += Heard;
        Watch.Changed += Turned;
        Away = Watch.Away;
    }

    /// <summary>Does something that needs the database. One that is away is a thing to say, not the end of the page and of what is typed there.</summary>
    protected async Task Reach(Func<Task> act)
    {
        try
        {
            await act();
            Away = Watch.Away;
        }
        catch (Exception error) when (DatabaseAway.Why(error) is { } why)
        {
            // The watch may not have noticed, and would then have nothing to take back.
            Away = why;
            Watch.Missed(why);
        }
    }

    void Heard(SquawkId? squawk) => Show(() => Concerns(squawk) ? Reach(Look) : Task.CompletedTask);

    void Turned() => Show(async () =>
    {
        Away = Watch.Away;
        if (Away is null) await Reach(Look);
    });

    // Raised on threads of others; errors belong to the circuit.
    async void Show(Func<Task> act)
    {
        try
        {
            await InvokeAsync(async () =>
            {
                await act();
                StateHasChanged();
            });
        }
        catch (ObjectDisposedException)
        {
            // The page was left while the news was on its way.
        }
        catch (Exception error)
        {
            await DispatchExceptionAsync(error);
        }
    }

    public void Dispose()
    {
        Listener.Changed -= Heard;
        Watch.Changed -= Turned;
        GC.SuppressFinalize(this);
    }
}
