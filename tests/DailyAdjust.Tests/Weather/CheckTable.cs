using System.Globalization;

namespace DailyAdjust.Tests.Weather;

/// <summary>Reads the small tables of values to hold calculations against: comment lines begin with #, then a header, then rows.</summary>
internal static class CheckTable
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string path)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, path))
            .Where(l => l.Length > 0 && !l.StartsWith('#')).ToArray();
        var header = Fields(lines[0]);
        return [.. lines.Skip(1).Select(l => (IReadOnlyDictionary<string, string>)header.Zip(Fields(l)).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal))];
    }

    public static double Number(this IReadOnlyDictionary<string, string> row, string column) =>
        double.Parse(row[column], CultureInfo.InvariantCulture);

    private static List<string> Fields(string line)
    {
        var fields = new List<string>();
        var field = new System.Text.StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
            {
                field.Append(c);
            }
        }

        fields.Add(field.ToString());
        return fields;
    }
}
