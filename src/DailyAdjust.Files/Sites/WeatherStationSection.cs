using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Core.Weather.Checks;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>One weather station: which files are its, and how they are read.</summary>
internal static class WeatherStationSection
{
    public const string Csv = "csv";

    /// <summary>What a public format needs no telling of.</summary>
    private static readonly TimeColumn NoTimeColumn = new("", null, "", StampClock.Local, StampMeaning.End);

    public static WeatherSource Read(Section section) => Read(section, section.NeedId("yard"));

    /// <summary>A source whose id is fixed: the forecast.</summary>
    /// <param name="section">Format, column map and the rest.</param>
    /// <param name="id">Its id.</param>
    public static WeatherSource Read(Section section, string id)
    {
        var format = section.NeedWord("format", [Csv, .. PublicFormats.All.Select(f => f.Name)]);
        var known = PublicFormats.Find(format);
        var interval = known?.Interval ?? Interval(section);
        var daily = interval == TimeSpan.FromDays(1);
        var unitsBelow = known is null && section.Flag("units_below");
        var accept = section.Find("accept");
        var files = Files(section);
        var source = new WeatherSource
        {
            Id = id,
            Files = files,
            Format = format,
            StationCode = section.Find("station") is null ? null : section.NeedText("station", "USW00094728"),
            ObservedAt = daily ? section.Time("observed_at") : null,
            Time = known is null ? Time(section.NeedMap("time", "{ column: Time, pattern: \"yyyy-MM-dd HH:mm\", clock: local, stamp: end }"), daily) : NoTimeColumn,
            Interval = interval,
            Missing = known is null && section.Find("missing") is { } missing ? Missing(missing, section) : [],
            Delimiter = known is null ? Delimiter(section) : null,
            DecimalComma = known is null && section.Word("decimal", "point", "comma") is "comma",
            UnitsBelow = unitsBelow,
            Columns = known is null ? Columns(section, daily, unitsBelow) : Plain(known),
            WindHeightM = section.Quantity("wind_height", UnitKind.Length, new(0.1, 100)) ?? known?.WindHeightM ?? 2,
            Coastal = section.Flag("coastal"),
            UseSuppliedEto = known is null && section.Word("eto", "computed", "supplied") is "supplied",
            LatitudeDeg = section.Number("latitude", new(-90, 90)),
            LongitudeDeg = section.Number("longitude", new(-180, 180)),
            ElevationM = section.Quantity("elevation", UnitKind.Length, new(-500, 9000)),
            Accept = accept is null ? [] : [.. Values.Items(accept).Select(item => Values.Text(item, section.NameOf("accept"), section.Problems)?.Value.Trim() ?? "")],
            Folder = section.Find("folder") is null ? null : section.NeedText("folder", "/srv/logger"),
            Pull = section.Map("pull") is { } pull ? PullSection.Read(pull, files) : null,
        };
        section.Done();
        Check(source, section);
        return source;
    }

    /// <summary>What the format carries, without headers: which quantities there are is asked by others.</summary>
    private static Dictionary<WeatherQuantity, MappedColumn> Plain(PublicFormat format) =>
        format.Quantities.ToDictionary(quantity => quantity, quantity => new MappedColumn(QuantityName.Of(quantity), null));

    private static void Check(WeatherSource source, Section section)
    {
        if (source.UseSuppliedEto && !source.Columns.ContainsKey(WeatherQuantity.ReferenceEt))
        {
            var at = section.KeyOf("eto");
            section.Problems.Error(at.Line, at.Column, $"{section.Name} is to supply its own ETo but maps no reference_et column", "add reference_et to its columns, or write \"eto: computed\"");
        }

        if (string.Equals(source.Format, Csv, StringComparison.Ordinal) && source.Columns.ContainsKey(WeatherQuantity.WindSpeed) && !section.Has("wind_height"))
        {
            section.Problems.Warn(section.At.Line, section.At.Column, $"{section.Name} measures wind but does not say at which height", "2 m is assumed; add \"wind_height: 2 m\"");
        }

        if (source.LatitudeDeg.HasValue != source.LongitudeDeg.HasValue)
        {
            section.Problems.Error(section.At.Line, section.At.Column, $"{section.Name} has one of latitude and longitude", "give both, or neither");
        }

        foreach (var (text, item) in source.Accept.Zip(section.Find("accept") is { } accept ? Values.Items(accept) : []))
        {
            if (WeatherChecks.FaultOf(text) is { } fault)
            {
                section.Problems.Error(item.Line, item.Column, $"{section.NameOf("accept")}: {fault.What}", fault.Hint);
            }
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
                "yyyy year, MM month, dd day, HH hour 00-23, hh with tt hour 01-12, mm minute: \"yyyy-MM-dd HH:mm\" or \"M/d/yyyy h:mm tt\"; epoch for seconds since 1970");
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
            case "blanks" or " ":
                return ' ';
            case [var sign] when char.IsAscii(sign) && (char.IsPunctuation(sign) || char.IsSymbol(sign)) && sign is not ('"' or '#' or '.' or '-' or '+'):
                return sign;
            default:
                section.Problems.Error(node.Line, node.Column, $"{section.NameOf("delimiter")}: {Wording.Quote(text.Value)} is not known", "write comma, semicolon, tab, bar, blanks, or the sign itself");
                return null;
        }
    }

    private static Dictionary<WeatherQuantity, MappedColumn> Columns(Section section, bool daily, bool unitsBelow)
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
            if (below.Find(key) is { } node && WeatherColumn.Read(node, quantity, below.NameOf(key), daily, unitsBelow, below) is { } column)
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
