using System.Globalization;
using MailKit.Security;
using MimeKit;
using Rigging.Storage;

namespace Rigging.Web.Notices;

/// <summary>The mail server that notices leave by.</summary>
/// <param name="Site">Where people find the site, for the link in a mail; null leaves the link out.</param>
public sealed record MailSettings(string Host, int Port, SecureSocketOptions Security, string? User, string? Password, MailboxAddress From, Uri? Site)
{
    /// <summary>The section of the settings; in the environment <c>Mail__Host</c> and so on.</summary>
    public const string Section = "Mail";

    /// <summary>Null when no host is named: then no e-mail is sent.</summary>
    /// <exception cref="StartRefusedException">A setting is missing or cannot be.</exception>
    public static MailSettings? Read(IConfiguration configuration)
    {
        var mail = configuration.GetSection(Section);
        if (mail["Host"] is not { Length: > 0 } host)
            return mail.GetChildren().FirstOrDefault(setting => setting is { Key: not "Site", Value.Length: > 0 }) is { } lost
                ? throw Wrong(lost.Key, "is set and Mail:Host is not", "Mail:Host too, or none of them")
                : null;
        var security = (mail["Security"] ?? "").ToLowerInvariant() switch
        {
            "" => SecureSocketOptions.StartTlsWhenAvailable,
            "starttls" => SecureSocketOptions.StartTls,
            "tls" => SecureSocketOptions.SslOnConnect,
            "none" => SecureSocketOptions.None,
            _ => throw Wrong("Security", $"is '{mail["Security"]}'", "starttls, tls or none; left out, starttls where the server offers it"),
        };
        var port = mail["Port"] is not { Length: > 0 } text ? (security == SecureSocketOptions.SslOnConnect ? 465 : 587)
            : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is > 0 and < 65536 ? number
            : throw Wrong("Port", $"is '{text}'", "a whole number from 1 to 65535");
        if (!MailboxAddress.TryParse(mail["From"] ?? "", out var from) || !from.Address.Contains('@', StringComparison.Ordinal))
            throw Wrong("From", string.IsNullOrEmpty(mail["From"]) ? "is missing" : $"is '{mail["From"]}'", "the address that mails come from, such as rigging@example.org");
        if (string.IsNullOrEmpty(mail["User"]) != string.IsNullOrEmpty(mail["Password"]))
            throw Wrong("User and Mail:Password", "go together and one is missing", "both, or neither");
        return new(host, port, security, mail["User"], mail["Password"], from, Uri.TryCreate(mail["Site"], UriKind.Absolute, out var site) ? site : null);
    }

    static StartRefusedException Wrong(string setting, string isWrong, string wanted) => new($"Mail:{setting} {isWrong}; wanted: {wanted}.");
}
