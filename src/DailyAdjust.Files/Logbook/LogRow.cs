using System.Globalization;
using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Logbook;

/// <summary>One line of the logbook while it is being read.</summary>
internal sealed class LogRow(LogLine line, Site site, int lineNumber, Func<string, int> placeOf, ProblemList problems)
{
    private const int MostStarts = 24;

    private static readonly Yaml.Limits RodLengths = new(0, 2, AboveMin: true);

    private bool _bad;

    /// <summary>Time, kind and place: known as soon as they are good, whatever the rest is. Ordinals count by it.</summary>
    public (LogTime Time, LogKind Kind, Place Where)? Address { get; private set; }

    /// <summary>The entry, or null when anything in the line is wrong.</summary>
    public LogEntry? Read()
    {
        var time = Time();
        var kind = Kind();
        var rule = kind is { } known ? LogRule.Of(known) : null;
        var where = rule is null ? null : Where(rule, kind!.Value);
        if (time is null || kind is null || where is null)
        {
            return null;
        }

        Address = (time.Value, kind.Value, where.Value);
        var entry = new LogEntry
        {
            Time = time.Value,
            Kind = kind.Value,
            Where = where.Value,
            Until = Until(rule!, kind.Value, time.Value),
            By = line.By,
            Note = line.Note,
        };
        entry = WithInstrument(WithValue(entry, rule!));
        return _bad ? null : entry;
    }

    private LogTime? Time()
    {
        if (LogTimeText.TryParse(line.Time, out var time))
        {
            return time;
        }

        Wrong(LogbookColumns.Time, line.Time.Length == 0 ? "the time is empty" : $"{Wording.Quote(line.Time)} is not a time", "write 2026-06-05 10:30, or a bare date where the whole day is meant");
        return null;
    }

    private LogKind? Kind()
    {
        var word = line.Kind.Trim();
        if (KindWord.Find(word) is { } kind)
        {
            return kind;
        }

        Wrong(LogbookColumns.Kind, word.Length == 0 ? "the kind is empty" : $"{Wording.Quote(word)} is not a kind of entry", Wording.DidYouMean(word, KindWord.All, "kinds"));
        return null;
    }

    private Place? Where(LogRule rule, LogKind kind)
    {
        if (line.Where.Length == 0 && rule.MayBeSite)
        {
            return new(PlaceKind.Site, "", "");
        }

        if (PlaceText.Find(line.Where, site, rule.StationFirst) is not { } place)
        {
            Wrong(LogbookColumns.Where, line.Where.Length == 0 ? "the place is empty" : $"there is no {Wording.Quote(line.Where)} on this site", rule.Places is [PlaceKind.Site] ? HintOfSite(kind) : PlaceText.Hint(line.Where, site, rule.Places));
            return null;
        }

        if (rule.Places.Contains(place.Kind))
        {
            return place;
        }

        if (kind == LogKind.Setting && place.Kind == PlaceKind.Station && KeyedMinutes.Fault(line, place, site) is { } minutes)
        {
            Wrong(LogbookColumns.Where, minutes.What, minutes.Hint);
        }
        else
        {
            Wrong(LogbookColumns.Where, $"{Word(kind)} does not go with {place}", $"it goes with {rule.PlacesInWords}");
        }

        return null;
    }

    private LogTime? Until(LogRule rule, LogKind kind, LogTime time)
    {
        if (kind is LogKind.Off or LogKind.Setting && line.Until.Length > 0)
        {
            Wrong(LogbookColumns.Until, $"{Word(kind)} has no end, but until {Shown.Short(line.Until)} stands there", "it counts until the next entry; for some days that end by themselves log pause (C2, 3 d), for an order with an end and a reason hold");
            return null;
        }

        if (line.Until.Length == 0)
        {
            if (rule.NeedsUntil)
            {
                Wrong(LogbookColumns.Until, "until is empty", "write the date, or the date and time, on which it ends");
            }

            return null;
        }

        if (!LogTimeText.TryParse(line.Until, out var until))
        {
            Wrong(LogbookColumns.Until, $"{Wording.Quote(line.Until)} is not a time", "write 2026-06-12 (through that date) or 2026-06-12 18:00");
            return null;
        }

        var (ends, begins) = (until.Instant(site.Clock), time.Begin(site.Clock));
        if (ends < begins || (ends == begins && new LogEntry { Time = time, Kind = kind, Where = default }.IsOrder))
        {
            Wrong(LogbookColumns.Until, $"until {line.Until} lies before {line.Time}: it would end before it begins", "one of them is wrong: write an end after its time (a bare date is through that date), or an earlier time if it has begun already");
        }

        return until;
    }

    private string HintOfSite(LogKind kind)
    {
        var names = kind == LogKind.Stage ? $", NAME {Wording.OneOf([.. site.Stages.Select(s => Wording.Quote(s.Name)), StageHistory.None])}" : "";
        return $"{Word(kind)} is of the whole site: write {Word(kind)} site{(kind == LogKind.Stage ? " NAME" : "")}{names}";
    }

    private LogEntry WithValue(LogEntry entry, LogRule rule)
    {
        switch (entry.Kind)
        {
            case LogKind.Off or LogKind.Visit or LogKind.Hold or LogKind.NoWater or LogKind.Power or LogKind.Checked:
                NoValue(entry.Kind);
                return entry;
            case LogKind.Note:
                return entry with { Note = entry.Note.Length == 0 ? line.Value : line.Value.Length == 0 ? entry.Note : $"{line.Value}; {entry.Note}" };
            case LogKind.Season:
                return entry with { Text = OneOf(SeasonState.All, "the season is open, closing, closed, drained or charging") };
            case LogKind.Stage:
                return entry with { Text = OneOf([.. site.Stages.Select(s => s.Name), StageHistory.None], site.Stages.Count == 0 ? "site.yaml describes no stages; `none` ends one" : $"write {Wording.OneOf([.. site.Stages.Select(s => s.Name), StageHistory.None])}") };
            case LogKind.GrowIn:
                return WithGrowIn(entry, rule);
            case LogKind.Void:
                return entry with { Text = OneOf(KindWord.All, "write the kind of the entry that is void; its time stands in time, its place in where") };
            case LogKind.Round:
                return WithRound(entry);
            default:
                return WithQuantity(entry, rule);
        }
    }

    private LogEntry WithQuantity(LogEntry entry, LogRule rule)
    {
        if (entry.Kind == LogKind.Setting && Is(line.Value, "off"))
        {
            return entry with { Value = 0, Unit = LogUnit.Percent };
        }

        if (entry.Kind == LogKind.Ran && (Is(line.Value, "yes") || Is(line.Value, "no")))
        {
            return entry with { Value = Is(line.Value, "yes") ? 100 : 0, Unit = LogUnit.Percent };
        }

        if (entry.Kind == LogKind.Hose && Is(line.Value, LogEntry.OnSpot))
        {
            return entry with { Text = LogEntry.OnSpot };
        }

        if (line.Value.Length == 0 && rule.ValueMayBeLeftOut)
        {
            return entry;
        }

        if (entry.Kind == LogKind.Setting && KeyedMinutes.Fault(line, entry.Where, site) is { } minutes)
        {
            Wrong(LogbookColumns.Value, minutes.What, minutes.Hint);
            return entry;
        }

        if (LogValue.Read(line.Value, line.Unit, rule, Wrong) is not { } value)
        {
            return entry;
        }

        var with = entry with { Value = value.Value, Unit = value.Unit };
        if (LogChecks.Fault(with, site) is { } fault)
        {
            Wrong(LogbookColumns.Value, fault.What, fault.Hint);
        }
        else if (LogChecks.Doubt(with, site) is { } doubt)
        {
            problems.Warn(lineNumber, placeOf(LogbookColumns.Value), doubt.What, doubt.Hint);
        }

        return with;
    }

    /// <summary>Which moisture meter, and how deep its rods reach.</summary>
    private LogEntry WithInstrument(LogEntry entry)
    {
        if (line.Instrument.Length == 0 && line.RodLength.Length == 0)
        {
            return entry;
        }

        if (entry.Kind is not (LogKind.Probe or LogKind.Spot))
        {
            Wrong(line.Instrument.Length > 0 ? LogbookColumns.Instrument : LogbookColumns.RodLength, $"{Word(entry.Kind)} is not read with a moisture meter", "instrument and rod length go with probe and spot; leave them empty");
            return entry;
        }

        entry = entry with { Instrument = line.Instrument };
        if (line.RodLength.Length == 0)
        {
            return entry;
        }

        if (!NumberText.TrySplit(line.RodLength, out var number, out var spelling) || Units.Find(spelling, UnitKind.Length) is not { } unit)
        {
            Wrong(LogbookColumns.RodLength, $"{Wording.Quote(line.RodLength)} is not a length with its unit", $"write 3 in; units that fit: {string.Join(", ", Units.Spellings(UnitKind.Length))}");
            return entry;
        }

        if (RodLengths.Holds(unit.ToMetric(number)))
        {
            return entry with { RodLengthM = unit.ToMetric(number) };
        }

        Wrong(LogbookColumns.RodLength, $"{line.RodLength} is out of range", $"it lies {RodLengths.InWords(unit.FromMetric, unit.Symbol)}");
        return entry;
    }

    /// <summary>"6 x 4 min": starts a day, and the minutes of each.</summary>
    private LogEntry WithGrowIn(LogEntry entry, LogRule rule)
    {
        var parts = line.Value.Split(['x', 'X', '×'], 2, StringSplitOptions.TrimEntries);
        if (parts.Length != 2 || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var times) || times is < 1 or > MostStarts)
        {
            Wrong(LogbookColumns.Value, line.Value.Length == 0 ? "the value is empty" : $"{Wording.Quote(line.Value)} is not starts a day times minutes", $"write 6 x 4 min: 1 to {MostStarts} starts a day, and the minutes of each");
            return entry;
        }

        return LogValue.Read(parts[1], line.Unit, rule, Wrong) is { } minutes ? entry with { Times = times, Value = minutes.Value, Unit = minutes.Unit } : entry;
    }

    private LogEntry WithRound(LogEntry entry)
    {
        if (RoundText.Read(line.Value, site, out var fault) is { } round)
        {
            return entry with { Sheet = round.Sheet, Issue = round.Issue, Except = round.Except };
        }

        Wrong(LogbookColumns.Value, fault.What, fault.Hint);
        return entry;
    }

    private string OneOf(IReadOnlyList<string> words, string hint)
    {
        if (words.FirstOrDefault(w => Is(line.Value, w)) is { } word)
        {
            return word;
        }

        Wrong(LogbookColumns.Value, line.Value.Length == 0 ? "the value is empty" : $"{Wording.Quote(line.Value)} is not known", hint);
        return "";
    }

    private void NoValue(LogKind kind)
    {
        if (line.Value.Length > 0)
        {
            Wrong(LogbookColumns.Value, $"{Word(kind)} has no value, but {Wording.Quote(line.Value)} stands there", "leave it empty; what you want to add goes into note");
        }
    }

    private void Wrong(string column, string what, string hint)
    {
        _bad = true;
        problems.Error(lineNumber, placeOf(column), what, hint);
    }

    private static string Word(LogKind kind) => KindWord.Of(kind);

    private static bool Is(string text, string word) => string.Equals(text.Trim(), word, StringComparison.OrdinalIgnoreCase);
}
