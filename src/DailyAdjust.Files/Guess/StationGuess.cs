using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>Proposes the column map of a station's table.</summary>
internal static class StationGuess
{
    /// <summary>Of the rows of a daily file, corrections.</summary>
    private const double MostTwice = 0.1;

    public static WeatherGuess Of(string file, SampleText text, GuessPlace? place, bool? monthFirst)
    {
        if (TableShape.Find(text.Lines) is not { } shape)
        {
            return Unknown(file, WhatItSaw.OfNoHeader(text));
        }

        if (TimeColumns.Find(shape) is not { } columns || StampGuess.Of(columns, shape.Rows, monthFirst) is not { } stamps)
        {
            return Unknown(file, WhatItSaw.OfNoTime(shape));
        }

        if (shape.Header[columns.Column].Length == 0 || (columns.TimeOfDay is { } apart && shape.Header[apart].Length == 0))
        {
            return Unknown(file, [new("time", "a column without a name", IsSure: true, FormattableString.Invariant($"line {shape.HeaderLine} does not name the column of the time: write Time there, in the station's settings"))]);
        }

        var hasTimeOfDay = StampPattern.HasTimeOfDay(stamps.Pattern);
        if (!hasTimeOfDay && StandAgain(stamps.Stamps))
        {
            return Unknown(file, WhatItSaw.OfNoTime(shape));
        }

        var step = StepGuess.Of(stamps.Stamps, hasTimeOfDay);
        if (step.Interval is not { } interval || (!hasTimeOfDay && interval < TimeSpan.FromDays(1)))
        {
            return Unknown(file, [new("interval", "not one that can be read", IsSure: true, step.Why)]);
        }

        var daily = interval == TimeSpan.FromDays(1);
        var (used, left, doubts) = ColumnGuess.Choose(shape, columns, daily);
        var proposal = ColumnProposal.Of(shape, used, stamps.Stamps, interval);
        if (proposal.Columns.Count == 0)
        {
            return Unknown(file, [WhatItSaw.Header(shape), new("columns", "none is known", IsSure: true, "name the columns by hand: docs/weather-files.md shows how")]) with { Left = left };
        }

        var clock = Clock(shape, columns, stamps, proposal, interval, place, text.Lines);
        var source = new WeatherSource
        {
            Id = FileNames.Id(file),
            Files = FileNames.Pattern(file),
            Format = WeatherStationSection.Csv,
            Interval = interval,
            Time = new(shape.Header[columns.Column], columns.TimeOfDay is { } t ? shape.Header[t] : null, stamps.Pattern, clock.Clock.Value, clock.Stamp.Value),
            Missing = proposal.Marks.Marks,
            Delimiter = proposal.DecimalComma.Value && shape.Delimiter == ',' ? null : shape.Delimiter,
            DecimalComma = proposal.DecimalComma.Value,
            UnitsBelow = shape.Units is not null,
            Columns = proposal.Columns,
        };
        return new()
        {
            File = file,
            What = "a weather station's table",
            Source = source,
            Findings = Findings(shape, columns, stamps, step, clock, proposal, doubts),
            Left = left,
            FirstDate = First(stamps, columns, text, shape.Delimiter),
            OtherPattern = stamps.Other,
            IsUs = proposal.Columns.Values.Any(column => (column.Unit ?? HeaderUnit.Split(column.Header).Unit) is "°F" or "F" or "in" or "mph"),
        };
    }

    /// <summary>Several rows of one date: there is a time of day that is not read, or there are several stations.</summary>
    private static bool StandAgain(IReadOnlyList<DateTime?> dates)
    {
        var known = dates.OfType<DateTime>().ToList();
        return known.Count - known.Distinct().Count() > MostTwice * known.Count;
    }

    private static ClockGuess Clock(
        TableShape shape, TimeColumns columns, StampGuess stamps, ColumnProposal proposal, TimeSpan interval, GuessPlace? place, IReadOnlyList<string> lines)
    {
        if (interval == TimeSpan.FromDays(1))
        {
            return ClockGuess.OfDays(StampPattern.HasTimeOfDay(stamps.Pattern), columns.EndsAt24);
        }

        string[] headers = [shape.Header[columns.Column], .. columns.TimeOfDay is { } t ? [shape.Header[t]] : Array.Empty<string>(), .. shape.Units is { } units && columns.Column < units.Count ? [units[columns.Column]] : Array.Empty<string>()];
        var known = stamps.Stamps.OfType<DateTime>().ToList();
        var winter = place is null ? (TimeSpan?)null : place.Clock.ToInstantStandard(DateOnly.FromDateTime(known[0]), TimeOnly.MinValue) is var instant ? DateOnly.FromDateTime(known[0]).ToDateTime(TimeOnly.MinValue) - instant.UtcDateTime : null;
        var said = SaidOfTime.Clock(columns.Zone, headers, [.. lines.Take(shape.HeaderLine - 1)], winter);
        var saidStamp = SaidOfTime.Stamp(columns.EndsAt24, headers);
        var (sun, why) = Sun(stamps.Stamps, proposal.Radiation, interval, place);
        return ClockGuess.Of(said, saidStamp, sun, why);
    }

    private static (SunClock? Sun, string Why) Sun(IReadOnlyList<DateTime?> stamps, IReadOnlyList<double>? radiation, TimeSpan interval, GuessPlace? place)
    {
        if (radiation is null)
        {
            return (null, "without radiation the sun cannot tell it");
        }

        if (place is null)
        {
            return (null, "without latitude, longitude and time zone (--site, or --latitude --longitude --time-zone) the sun cannot tell it");
        }

        var rows = stamps.Zip(radiation).Where(row => row.First is not null && !double.IsNaN(row.Second)).Select(row => (row.First!.Value, row.Second)).OrderBy(row => row.Item1).ToList();
        return SunClock.Of(rows, interval, place) is { } sun ? (sun, "") : (null, "there is no whole day with radiation by which the sun could tell it");
    }

    private static List<Finding> Findings(
        TableShape shape, TimeColumns columns, StampGuess stamps, StepGuess step, ClockGuess clock, ColumnProposal proposal, IReadOnlyList<Finding> doubts)
    {
        List<Finding> findings =
        [
            WhatItSaw.Header(shape),
            new("interval", StepGuess.Text(step.Interval!.Value), step.IsSure, step.Why),
            new("time.column", "\"" + shape.Header[columns.Column] + "\"" + (columns.TimeOfDay is { } t ? $" and \"{shape.Header[t]}\"" : ""), IsSure: true, "it holds the times"),
            new("time.pattern", stamps.Pattern, stamps.Other is null, stamps.Why),
            new("time.clock", GuessYaml.Word(clock.Clock.Value), clock.Clock.IsSure, clock.Clock.Why),
            new("time.stamp", GuessYaml.Word(clock.Stamp.Value), clock.Stamp.IsSure, clock.Stamp.Why),
            new("decimal", proposal.DecimalComma.Value ? "comma" : "point", proposal.DecimalComma.IsSure, proposal.DecimalComma.Why),
            new("missing", proposal.Marks.Marks.Count == 0 ? "only empty cells" : string.Join("  ", proposal.Marks.Marks), proposal.Marks.Doubts.Count == 0, string.Join("; ", proposal.Marks.Doubts.Prepend(proposal.Marks.Why))),
        ];
        if (proposal.Columns.ContainsKey(WeatherQuantity.WindSpeed))
        {
            findings.Add(new("wind_height", "2 m", IsSure: false, "no file says how high its anemometer stands"));
        }

        foreach (var finding in proposal.Findings)
        {
            var doubt = doubts.FirstOrDefault(d => string.Equals(d.Key, finding.Key, StringComparison.Ordinal));
            findings.Add(doubt is null ? finding : finding with { IsSure = false, Why = $"{finding.Why}; {doubt.Why}" });
        }

        return findings;
    }

    /// <summary>The earliest of the first rows and the last one; some files have the newest row first.</summary>
    private static DateOnly? First(StampGuess stamps, TimeColumns columns, SampleText text, char delimiter)
    {
        var known = stamps.Stamps.OfType<DateTime>().ToList();
        var last = StampGuess.Of(columns with { Patterns = [stamps.Pattern] }, [TableShape.Cells(text.LastLine, delimiter)], monthFirst: null)?.Stamps[0];
        return DateOnly.FromDateTime(last is { } end ? known.Append(end).Min() : known.Min());
    }

    private static WeatherGuess Unknown(string file, IReadOnlyList<Finding> saw) => new() { File = file, What = "not recognised", Findings = saw };
}
