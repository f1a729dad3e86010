using System.Globalization;

namespace Rigging.Mechanics.Tests;

/// <summary>A table of published values: comma separated, its provenance in lines that begin with #.</summary>
static class Published
{
    public static IReadOnlyList<Row> Table(string name)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Data", name))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => line.Split(','))
            .ToArray();
        return [.. lines[1..].Select(cells => new Row(lines[0].Zip(cells).ToDictionary(c => c.First, c => c.Second)))];
    }

    public sealed record Row(IReadOnlyDictionary<string, string> Cells)
    {
        public string this[string column] => Cells[column];

        public double Number(string column) => double.Parse(Cells[column], CultureInfo.InvariantCulture);

        public override string ToString() => string.Join(' ', Cells.Values);
    }
}
