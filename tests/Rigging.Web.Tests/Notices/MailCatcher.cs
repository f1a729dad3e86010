using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Threading.Channels;
using MimeKit;

namespace Rigging.Web.Tests.Notices;

/// <summary>A mail server on the loopback address that keeps what it is given.</summary>
public sealed class MailCatcher : IAsyncDisposable
{
    readonly TcpListener listener = new(IPAddress.Loopback, 0);
    readonly CancellationTokenSource stop = new();
    readonly Channel<MimeMessage> came = Channel.CreateUnbounded<MimeMessage>();
    readonly Task serving;

    public MailCatcher()
    {
        listener.Start();
        Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        serving = Serve();
    }

    public int Port { get; }

    /// <summary>What came, in order.</summary>
    public ConcurrentQueue<MimeMessage> Mails { get; } = [];

    /// <summary>Connections so far.</summary>
    public int Calls { get; private set; }

    /// <summary>Hangs up on whoever calls.</summary>
    public bool Down { get; set; }

    /// <summary>What it answers to a recipient whose address holds the text; null: takes everybody.</summary>
    public (string Address, string Answer)? Refuses { get; set; }

    /// <summary>Waits for the next mail.</summary>
    public async Task<MimeMessage> Next() => await came.Reader.ReadAsync(TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await serving;
        stop.Dispose();
    }

    async Task Serve()
    {
        try
        {
            while (true)
            {
                using var caller = await listener.AcceptTcpClientAsync(stop.Token);
                Calls++;
                if (!Down) await Talk(caller);
            }
        }
        catch (Exception over) when (over is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    async Task Talk(TcpClient caller)
    {
        await using var stream = caller.GetStream();
        using var reader = new StreamReader(stream);
        await using var writer = new StreamWriter(stream) { NewLine = "\r\n", AutoFlush = true };
        await writer.WriteLineAsync("220 catcher");
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            var word = line.Split(' ', ':')[0].ToUpperInvariant();
            await writer.WriteLineAsync(word switch
            {
                "RCPT" when Refuses is { } refuses && line.Contains(refuses.Address, StringComparison.Ordinal) => refuses.Answer,
                "DATA" => "354 go on",
                "QUIT" => "221 bye",
                _ => "250 ok",
            });
            if (word == "QUIT") return;
            if (word != "DATA") continue;
            var text = new StringWriter { NewLine = "\r\n" };
            while (await reader.ReadLineAsync(stop.Token) is { } part and not ".") await text.WriteLineAsync(part.StartsWith("..", StringComparison.Ordinal) ? part[1..] : part);
            using var bytes = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(text.ToString()));
            var mail = await MimeMessage.LoadAsync(bytes, stop.Token);
            Mails.Enqueue(mail);
            await came.Writer.WriteAsync(mail, stop.Token);
            await writer.WriteLineAsync("250 kept");
        }
    }
}
