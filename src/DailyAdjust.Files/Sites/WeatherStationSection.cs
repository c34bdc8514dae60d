using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>One weather station: which files are its, and how they are read.</summary>
internal static class WeatherStationSection
{
    public static WeatherSource Read(Section section)
    {
        var id = section.NeedId("yard");
        var format = section.NeedWord("format", "csv");
        var interval = Interval(section);
        var daily = interval == TimeSpan.FromDays(1);
        var columns = Columns(section, daily);
        var source = new WeatherSource
        {
            Id = id,
            Files = Files(section),
            Format = format,
            Time = Time(section.NeedMap("time", "{ column: Time, pattern: \"yyyy-MM-dd HH:mm\", clock: local, stamp: end }"), daily),
            Interval = interval,
            Missing = section.Find("missing") is { } missing ? Missing(missing, section) : [],
            Delimiter = Delimiter(section),
            DecimalComma = section.Word("decimal", "point", "comma") is "comma",
            Columns = columns,
            WindHeightM = section.Quantity("wind_height", UnitKind.Length, new(0.1, 100)) ?? 2,
            Coastal = section.Flag("coastal"),
            UseSuppliedEto = section.Word("eto", "computed", "supplied") is "supplied",
        };
        section.Done();
        Check(source, section);
        return source;
    }

    private static void Check(WeatherSource source, Section section)
    {
        if (source.UseSuppliedEto && !source.Columns.ContainsKey(WeatherQuantity.ReferenceEt))
        {
            var at = section.KeyOf("eto");
            section.Problems.Error(at.Line, at.Column, $"{section.Name} is to supply its own ETo but maps no reference_et column", "add reference_et to its columns, or write \"eto: computed\"");
        }

        if (source.Columns.ContainsKey(WeatherQuantity.WindSpeed) && !section.Has("wind_height"))
        {
            section.Problems.Warn(section.At.Line, section.At.Column, $"{section.Name} measures wind but does not say at which height", "2 m is assumed; add \"wind_height: 2 m\"");
        }

        if (source is { DecimalComma: true, Delimiter: ',' })
        {
            var at = section.KeyOf("delimiter");
            section.Problems.Error(at.Line, at.Column, $"{section.Name} uses the comma as delimiter and in its numbers", "one of them must be another sign");
        }
    }

    private static string Files(Section section)
    {
        var files = section.NeedText("files", "\"yard-*.csv\"");
        if (files.AsSpan().IndexOfAny('/', '\\') >= 0)
        {
            var at = section.Find("files")!;
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("files")}: {Wording.Quote(files)} names a folder", "write a file name; * stands for any letters. Files are taken from the inbox");
        }

        return files;
    }

    /// <summary>1 to 60 minutes that divide the hour, or a day.</summary>
    private static TimeSpan Interval(Section section)
    {
        var minutes = section.NeedQuantity("interval", UnitKind.Duration, new(1, 1440), "1 h");
        if (minutes == 1440 || (minutes <= 60 && 60 % minutes == 0))
        {
            return TimeSpan.FromMinutes(minutes);
        }

        var at = section.KeyOf("interval");
        section.Problems.Error(at.Line, at.Column, $"{section.NameOf("interval")}: {Wording.Number(minutes)} min does not divide the hour", "write 1, 5, 10, 15, 20, 30 or 60 min, or 1 d");
        return TimeSpan.FromHours(1);
    }

    private static TimeColumn Time(Section? section, bool daily)
    {
        if (section is null)
        {
            return new("", null, "", StampClock.Local, StampMeaning.End);
        }

        var timeOfDay = section.Text("time_column", "");
        var time = new TimeColumn(
            section.NeedText("column", "Time"),
            timeOfDay.Length == 0 ? null : timeOfDay,
            section.NeedText("pattern", "\"yyyy-MM-dd HH:mm\""),
            section.NeedWord("clock", "local", "standard", "utc") switch
            {
                "standard" => StampClock.Standard,
                "utc" => StampClock.Utc,
                _ => StampClock.Local,
            },
            section.NeedWord("stamp", "end", "start") is "start" ? StampMeaning.Start : StampMeaning.End);
        section.Done();
        CheckPattern(time.Pattern, daily, section);
        return time;
    }

    /// <summary>What the reader of files would refuse is refused here, where it can be put right.</summary>
    private static void CheckPattern(string pattern, bool daily, Section section)
    {
        if (pattern.Length > 0 && StampPattern.Fault(pattern, daily) is { } fault)
        {
            var at = section.KeyOf("pattern");
            section.Problems.Error(
                at.Line,
                at.Column,
                $"{section.NameOf("pattern")}: {fault}",
                "yyyy year, MM month, dd day, HH hour 00-23, hh with tt hour 01-12, mm minute: \"yyyy-MM-dd HH:mm\" or \"M/d/yyyy h:mm tt\"");
        }
    }

    private static IReadOnlyList<string> Missing(YamlNode node, Section section) =>
        [.. Values.Items(node).Select(item => Values.Text(item, section.NameOf("missing"), section.Problems)?.Value ?? "")];

    private static char? Delimiter(Section section)
    {
        if (section.Find("delimiter") is not { } node || Values.Text(node, section.NameOf("delimiter"), section.Problems) is not { } text)
        {
            return null;
        }

        switch (text.Value.ToLowerInvariant())
        {
            case "comma" or ",":
                return ',';
            case "semicolon" or ";":
                return ';';
            case "tab" or "\t":
                return '\t';
            case "bar" or "|":
                return '|';
            default:
                section.Problems.Error(node.Line, node.Column, $"{section.NameOf("delimiter")}: {Wording.Quote(text.Value)} is not known", "write comma, semicolon, tab or bar");
                return null;
        }
    }

    private static Dictionary<WeatherQuantity, MappedColumn> Columns(Section section, bool daily)
    {
        var columns = new Dictionary<WeatherQuantity, MappedColumn>();
        if (section.NeedMap("columns", "{ air_temperature: \"Temp (°F)\", rain: \"Rain (in)\" }") is not { } below)
        {
            return columns;
        }

        var before = below.Problems.Count;
        foreach (var quantity in Enum.GetValues<WeatherQuantity>())
        {
            var key = QuantityName.Of(quantity);
            if (below.Find(key) is { } node && WeatherColumn.Read(node, quantity, below.NameOf(key), daily, below) is { } column)
            {
                columns.Add(quantity, column);
            }
        }

        below.Done();
        if (columns.Count == 0 && below.Problems.Count == before)
        {
            below.Problems.Error(below.At.Line, below.At.Column, $"{below.Name} maps no column", "write at least one: air_temperature: \"Temp (°F)\"");
        }

        return columns;
    }
}
