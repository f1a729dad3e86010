using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Storage.Doors;
using Rigging.Storage.Notices;

namespace Rigging.Storage;

/// <summary>How our own types are kept in columns: ids as uuid, words as kebab-case text, the same words as in entries and files.</summary>
static class Columns
{
    public static readonly ValueConverter<IReadOnlyList<Authority>, string[]> Authorities =
        new(list => list.Select(Word<Authority>.Of).ToArray(), words => words.Select(Word<Authority>.Read).ToArray());

    public static readonly ValueComparer<IReadOnlyList<Authority>> AuthoritiesComparer =
        new((a, b) => a!.SequenceEqual(b!), list => list.Aggregate(0, (hash, authority) => HashCode.Combine(hash, authority)), list => list.ToArray());

    /// <summary>For what people typed: PostgreSQL text takes neither NUL nor half a surrogate pair. Entries escape both, so nothing is lost there.</summary>
    public static readonly ValueConverter<string, string> TypedText = new(text => Storable(text), text => text);

    internal static string Storable(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)).Replace('\0', '\ufffd');

    public static void Configure(ModelConfigurationBuilder model)
    {
        model.Properties<PersonId>().HaveConversion<PersonIdColumn>();
        model.Properties<CertificateId>().HaveConversion<CertificateIdColumn>();
        model.Properties<AircraftId>().HaveConversion<AircraftIdColumn>();
        model.Properties<SquawkId>().HaveConversion<SquawkIdColumn>();
        model.Properties<ToolId>().HaveConversion<ToolIdColumn>();
        model.Properties<Authority>().HaveConversion<Word<Authority>>();
        model.Properties<Stage>().HaveConversion<Word<Stage>>();
        model.Properties<FlightStatus>().HaveConversion<Word<FlightStatus>>();
        model.Properties<NoticeKind>().HaveConversion<Word<NoticeKind>>();
        model.Properties<SecurityEventKind>().HaveConversion<Word<SecurityEventKind>>();
    }

    sealed class PersonIdColumn() : ValueConverter<PersonId, Guid>(id => id.Value, value => new(value));

    sealed class CertificateIdColumn() : ValueConverter<CertificateId, Guid>(id => id.Value, value => new(value));

    sealed class AircraftIdColumn() : ValueConverter<AircraftId, Guid>(id => id.Value, value => new(value));

    sealed class SquawkIdColumn() : ValueConverter<SquawkId, Guid>(id => id.Value, value => new(value));

    sealed class ToolIdColumn() : ValueConverter<ToolId, Guid>(id => id.Value, value => new(value));

    sealed class Word<T>() : ValueConverter<T, string>(value => Of(value), word => Read(word)) where T : struct, Enum
    {
        static readonly Dictionary<T, string> Words = Enum.GetValues<T>()
            .ToDictionary(value => value, value => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()));

        static readonly Dictionary<string, T> Values = Words.ToDictionary(pair => pair.Value, pair => pair.Key);

        public static string Of(T value) => Words[value];

        public static T Read(string word) => Values[word];
    }
}
