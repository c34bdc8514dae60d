using System.CommandLine;
using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`log`: one entry in the logbook.</summary>
internal static class LogCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var kind = new Argument<string>("KIND") { Description = string.Join(' ', KindWord.All) };
        var words = new Argument<string[]>("WORDS") { Description = "Where, then the value with its unit, as they stand in logbook.csv.", Arity = ArgumentArity.ZeroOrMore };
        var at = new Option<string?>("--time") { Description = "When, on the site's clock: 05:30, or \"2026-06-11 05:30\". Without it: now, or with --date that whole date.", HelpName = "TIME" };
        var until = new Option<string?>("--until") { Description = "When it ends: a date (through that date), date and time, or a time of day.", HelpName = "DATE" };
        var except = new Option<string[]>("--except") { Description = "Round: programs or controllers that were not done.", HelpName = "PLACE", AllowMultipleArgumentsPerToken = true };
        var by = new Option<string?>("--by") { Description = "Who says so.", HelpName = "NAME" };
        var note = new Option<string?>("--note") { Description = "Anything worth remembering.", HelpName = "TEXT" };
        var instrument = new Option<string?>("--instrument") { Description = "Probe and spot: which moisture meter.", HelpName = "NAME" };
        var rod = new Option<string?>("--rod") { Description = "Probe and spot: how deep its rods reach, such as 3 in.", HelpName = "LENGTH" };
        return new AppCommand(
            "log",
            "Adds a logbook entry: what somebody did or saw.",
            "Places: C1/P2 (program), C1/3 (station), C1 (controller), area:greens, gauge:yard, pump, site. An entry with the time, kind and place\nof an earlier one takes its place; `void` takes one back. `log round FILE` takes a filled-in round.csv, as `ingest` does;\n--date and --time then say when it was done.",
            "log round 2026-06-08 done --except C3/P1",
            "log round 2026-06-02..2026-06-07 done",
            "log round ~/Downloads/round.csv",
            "log setting C1/P2 90",
            "log off C2/P1 --note \"leak at fairway 5\"",
            "log ran C1 no --date 2026-06-09",
            "log ran pump no --time 01:10 --until 03:40",
            "log rain yard 0.3 in",
            "log hose C1/3 0.1 in",
            "log probe C1/1 14 %",
            "log probe C1/1 14 % --instrument \"meter 2\" --rod \"3 in\"",
            "log hold C1 --until 2026-06-12 --note \"tournament\"",
            "log no-water area:greens --time \"2026-06-12 18:00\" --until \"2026-06-13 06:00\" --by Pat --note \"foliar feeding\"",
            "log void setting C1/P2 --time \"2026-06-08 10:30\"")
        {
            kind, words, at, until, except, by, note, instrument, rod,
        }.Runs(global, time, context => Run(context, new LogWords(
            context.Parsed.GetValue(kind)!.ToLowerInvariant(),
            context.Parsed.GetValue(words) ?? [],
            context.Parsed.GetValue(at),
            context.Parsed.GetValue(until) ?? "",
            context.Parsed.GetValue(except) ?? [],
            context.Parsed.GetValue(by) ?? "",
            context.Parsed.GetValue(note) ?? "",
            context.Parsed.GetValue(instrument) ?? "",
            context.Parsed.GetValue(rod) ?? "")));
    }

    private static int Run(CommandContext context, LogWords words)
    {
        using var site = context.OneSite().ToWrite(today: null, from: null, context.Time, out var badEdit);
        var now = context.Time.GetUtcNow();
        if (badEdit is not null)
        {
            context.Error.WriteLine(badEdit);
        }

        if (RoundFile.Of(words) is { } file)
        {
            return IngestCommand.TakeAll(context, site, [file], new(words.Said(site.Newest, context.Date, now), words.By));
        }

        // As they are before the first entry: the rounds of a span do not answer one another.
        var sheets = LogTargets.Sheets(site);
        foreach (var one in RoundSpan.Each(site, words, sheets))
        {
            Add(context, site, one, sheets, now);
        }

        return ExitCode.Done;
    }

    private static void Add(CommandContext context, OpenSite site, LogWords words, AnswerableSheets sheets, DateTimeOffset now)
    {
        var line = words.ToLine(site.Newest, context.Date, now);
        var reading = LogbookReader.Read(line, site.Newest);
        if (reading.Entries.Count == 0)
        {
            throw new WrongInputException(
                string.Join(Environment.NewLine, reading.Problems.Select(p => $"{p.What}. {p.HintEnded}".TrimEnd())), "Nothing was added. `dailyadjust log --help` shows examples.");
        }

        var entry = reading.Entries[0];
        LogTargets.Check(site, entry, sheets);
        if (words.Time is null || entry.Kind == LogKind.Round)
        {
            entry = NextOrdinal(site, entry);
        }

        var turnsOn = TurnedOnNote.Of(site, entry);
        var rainAsked = RainQuestions.Open(site, entry);
        var added = new FileIntake(site, now).Add([entry]);
        foreach (var warning in reading.Problems)
        {
            context.Error.WriteLine($"{warning.What}: {warning.HintEnded}");
        }

        var become = added.Known > 0 ? "Known already" : added.Superseded > 0 ? "Added in place of an earlier entry" : "Added";
        context.Out.WriteLine($"{become}: {InWords(line)}");
        foreach (var note in new[] { HandRainBook.Note(site, entry, now), RainQuestions.Note(rainAsked, RainQuestions.Open(site, entry), entry.Where.Name), LogTargets.NoRound(site, entry), OneDialNote.Of(site.Newest, entry), turnsOn, LogReach.SkippedNote(site, entry), LogReach.Note(site, entry) }.OfType<string>())
        {
            context.Out.WriteLine(note);
        }
    }

    private static string InWords(LogLine line) => string.Join(' ', new[]
    {
        line.Time,
        line.Kind,
        line.Where,
        line.Value,
        line.Unit,
        line.Until.Length > 0 ? "until " + line.Until : "",
        line.By.Length > 0 ? "by " + line.By : "",
        line.Note.Length > 0 ? $"({line.Note})" : "",
        line.Instrument.Length > 0 ? "with " + line.Instrument : "",
        line.RodLength.Length > 0 ? $"rods {line.RodLength}" : "",
    }.Where(part => part.Length > 0));

    /// <summary>Two things seen in the same minute are two entries, and so are the rounds of two sheets; a round told again at its time takes its own place.</summary>
    private static LogEntry NextOrdinal(OpenSite site, LogEntry entry)
    {
        var taken = site.Ledger.Logbook.Effective().Where(e => e.Time == entry.Time && e.Kind == entry.Kind && e.Where == entry.Where).ToList();
        return taken.Find(e => e.Kind == LogKind.Round && e.Sheet == entry.Sheet) is { } same
            ? entry with { Ordinal = same.Ordinal }
            : entry with { Ordinal = taken.Select(e => e.Ordinal + 1).Append(0).Max() };
    }
}

/// <summary>The words of a `log` command.</summary>
internal sealed record LogWords(
    string Kind, IReadOnlyList<string> Words, string? Time, string Until, IReadOnlyList<string> Except, string By, string Note, string Instrument, string Rod)
{
    /// <summary>The same as a line of logbook.csv.</summary>
    public LogLine ToLine(Site site, DateOnly? date, DateTimeOffset now)
    {
        var words = Words.ToList();
        var voided = "";
        if (Kind is "void" && words.Count > 0)
        {
            voided = words[0];
            words.RemoveAt(0);
        }

        var where = TakePlace(words, site);
        var value = Kind is "void" ? voided : string.Join(' ', words);
        if (Kind is "round" && Except.Count > 0)
        {
            value += " except " + string.Join(' ', Except);
        }

        // Percentages of `ran` and `probe` are what people say without their sign.
        var bare = Kind is "ran" or "probe" or "spot" && double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
        var time = TimeText(site, date, now);
        return new LogLine { Time = time, Kind = Kind, Where = where, Value = value, Unit = bare ? "%" : "", Until = UntilText(time), By = By, Note = Note, Instrument = Instrument, RodLength = Rod };
    }

    /// <summary>When it is said, UTC.</summary>
    /// <exception cref="WrongInputException">--time cannot be read.</exception>
    public DateTimeOffset Said(Site site, DateOnly? date, DateTimeOffset now) => Time is null && date is null ? now
        : LogTimeText.TryParse(TimeText(site, date, now), out var time) ? time.Instant(site.Clock)
        : throw new WrongInputException($"--time {Time} is no time.", "Write 05:30, or \"2026-06-11 05:30\".");

    private string TakePlace(List<string> words, Site site)
    {
        if (Kind is "pump" && (words.Count == 0 || words[0] is [>= '0' and <= '9', ..]))
        {
            return "pump";
        }

        var mayBeLeftOut = Kind is "round" or "season" or "note" or "void";
        if (words.Count == 0 || (mayBeLeftOut && PlaceText.Find(words[0], site) is null))
        {
            return "";
        }

        var place = words[0];
        words.RemoveAt(0);
        return Kind is "rain" && !place.Contains(':', StringComparison.Ordinal) ? "gauge:" + place : place;
    }

    /// <summary>A time of day alone is the next one after the entry's time.</summary>
    private string UntilText(string time)
    {
        if (!TimeOnly.TryParseExact(Until, ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var clock) || !LogTimeText.TryParse(time, out var from))
        {
            return Until;
        }

        var date = from.Clock is { } begins && clock <= begins ? from.Date.AddDays(1) : from.Date;
        return string.Create(CultureInfo.InvariantCulture, $"{date:yyyy-MM-dd} {clock:HH:mm}");
    }

    private string TimeText(Site site, DateOnly? date, DateTimeOffset now)
    {
        var local = site.Clock.ToLocal(now);
        if (Time is not null)
        {
            // A time of day alone is today's, or --date's.
            return TimeOnly.TryParseExact(Time, ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var clock)
                ? string.Create(CultureInfo.InvariantCulture, $"{date ?? DateOnly.FromDateTime(local.DateTime):yyyy-MM-dd} {clock:HH:mm}")
                : Time;
        }

        // Nobody knows when the power went just because he writes it down now.
        return (date ?? (Kind is "power" ? DateOnly.FromDateTime(local.DateTime) : null)) is { } day
            ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : local.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }
}
