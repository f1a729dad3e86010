using MailKit;
using MailKit.Net.Smtp;
using MimeKit;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Storage.Ledgers;

namespace Rigging.Web.Notices;

/// <summary>Carries notices to the mail server, on its own and at its own pace: an entry never waits for a mail.</summary>
/// <remarks>A mail may come twice if the program dies between sending and marking; it never gets lost for that reason.</remarks>
public sealed class Postman(MailSettings? settings, Outbox outbox, LedgerListener announcements, IClock clock, ILogger<Postman> log) : BackgroundService
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);
    static readonly TimeSpan Round = TimeSpan.FromMinutes(1);

    readonly SemaphoreSlim news = new(0, 1);
    readonly Dictionary<Guid, Instant> notBefore = [];
    int failuresInARow;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings is null) return;
        announcements.Changed += Ring;
        try
        {
            while (!stoppingToken.IsCancellationRequested)
            {
                await OnTheRound(stoppingToken);
                await news.WaitAsync(Round, stoppingToken);
            }
        }
        catch (OperationCanceledException)
        {
            // The program stops; what is left is sent at the next start.
        }
        finally
        {
            announcements.Changed -= Ring;
        }
    }

    async Task OnTheRound(CancellationToken ct)
    {
        try
        {
            await SendDue(ct);
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            log.LogWarning("No notices were mailed this time: {Reason}", error.Message);
        }
    }

    void Ring(SquawkId? squawk)
    {
        try
        {
            news.Release();
        }
        catch (SemaphoreFullException)
        {
            // Rung already.
        }
    }

    /// <summary>How long to wait after so many failures: a minute, then twice as long each time, at most four hours.</summary>
    internal static Duration BackOff(int failures) => Duration.FromMinutes(Math.Min(Math.Pow(2, Math.Max(0, failures - 1)), 240));

    /// <summary>Sends what is due and may be tried now.</summary>
    /// <returns>How many left.</returns>
    public async Task<int> SendDue(CancellationToken ct)
    {
        if (settings is null) return 0;
        var sent = 0;
        await outbox.InTurn(async () =>
        {
            var now = clock.GetCurrentInstant();
            var due = (await outbox.Due(ct)).Where(letter => notBefore.GetValueOrDefault(letter.Notice) <= now && notBefore.GetValueOrDefault(Guid.Empty) <= now).ToList();
            if (due.Count > 0) sent = await Send(due, ct);
        }, ct);
        return sent;
    }

    async Task<int> Send(List<Letter> due, CancellationToken ct)
    {
        using var smtp = new SmtpClient { Timeout = (int)Patience.TotalMilliseconds };
        try
        {
            await smtp.ConnectAsync(settings!.Host, settings.Port, settings.Security, ct);
            if (settings is { User: { Length: > 0 } user, Password: { } password }) await smtp.AuthenticateAsync(user, password, ct);
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            ServerFailed(error);
            return 0;
        }
        var sent = 0;
        foreach (var letter in due)
        {
            if (!smtp.IsConnected) break;
            sent += await Send(smtp, letter, ct) ? 1 : 0;
        }
        if (smtp.IsConnected) await smtp.DisconnectAsync(quit: true, ct);
        return sent;
    }

    async Task<bool> Send(SmtpClient smtp, Letter letter, CancellationToken ct)
    {
        if (!MailboxAddress.TryParse(letter.Email, out var address))
        {
            log.LogWarning("A notice for {Name} cannot be mailed: '{Email}' is not an e-mail address.", letter.Name, letter.Email);
            await outbox.GiveUp(letter, ct);
            return false;
        }
        try
        {
            using var mail = Write(letter, new(letter.Name, address.Address));
            await smtp.SendAsync(mail, ct);
            await outbox.Sent(letter, ct);
            (failuresInARow, _) = (0, notBefore.Remove(letter.Notice));
            return true;
        }
        catch (SmtpCommandException refused) when (refused.ErrorCode != SmtpErrorCode.SenderNotAccepted)
        {
            // The server talks to us and will not have this one: the others still go.
            log.LogWarning("The mail server does not take the notice for {Email}: {Reason}", letter.Email, refused.Message);
            notBefore[letter.Notice] = clock.GetCurrentInstant() + BackOff(letter.Attempts + 1);
            await ((int)refused.StatusCode >= 500 ? outbox.GiveUp(letter, ct) : outbox.Failed(letter, ct));
            return false;
        }
        catch (Exception error) when (error is ProtocolException or ServiceNotConnectedException or ServiceNotAuthenticatedException or IOException or TimeoutException)
        {
            ServerFailed(error);
            return false;
        }
    }

    // No letter's fault, so none of them loses a try.
    void ServerFailed(Exception error)
    {
        failuresInARow++;
        notBefore[Guid.Empty] = clock.GetCurrentInstant() + BackOff(failuresInARow);
        log.LogWarning("The mail server {Host}:{Port} cannot be used ({Reason}); the next try is in {Minutes} min.",
            settings!.Host, settings.Port, error.Message, BackOff(failuresInARow).TotalMinutes);
    }

    MimeMessage Write(Letter letter, MailboxAddress to)
    {
        var link = settings!.Site is { } site ? $"\n\n{new Uri(site, $"squawks/{letter.Squawk}")}" : "";
        var mail = new MimeMessage([settings.From], [to], letter.Subject, new TextPart("plain") { Text = $"{letter.Body}{link}\n" });
        // A second copy after a crash is known as one, and nobody's holiday notice answers.
        mail.MessageId = $"{letter.Notice:N}@{settings.From.Address.Split('@')[^1]}";
        mail.Headers.Add("Auto-Submitted", "auto-generated");
        return mail;
    }
}
