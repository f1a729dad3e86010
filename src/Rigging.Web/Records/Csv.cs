using System.Globalization;
using System.Reflection;
using System.Text.Json;
using CsvHelper;
using CsvHelper.Configuration;
using NodaTime;
using NodaTime.Text;

namespace Rigging.Web.Records;

/// <summary>Lines of a list as a file for a spreadsheet (RFC 4180): a column for each property, dates and times as ISO 8601.</summary>
static class Csv
{
    // What a spreadsheet would take for a formula is made text.
    static readonly CsvConfiguration Form = new(CultureInfo.InvariantCulture) { NewLine = "\r\n", InjectionOptions = InjectionOptions.Escape, InjectionEscapeCharacter = '\'' };

    public static string Of<T>(IEnumerable<T> lines)
    {
        var columns = typeof(T).GetProperties(BindingFlags.Public | BindingFlags.Instance);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = new CsvWriter(text, Form))
        {
            foreach (var column in columns) csv.WriteField(JsonNamingPolicy.KebabCaseLower.ConvertName(column.Name));
            foreach (var line in lines)
            {
                csv.NextRecord();
                foreach (var column in columns) csv.WriteField(Words(column.GetValue(line)));
            }
            csv.NextRecord();
        }
        return text.ToString();
    }

    static string Words(object? value) => value switch
    {
        null => "",
        Instant at => InstantPattern.General.Format(at),
        LocalDate day => LocalDatePattern.Iso.Format(day),
        Enum word => JsonNamingPolicy.KebabCaseLower.ConvertName(word.ToString()),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
