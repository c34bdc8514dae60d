using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Rounds;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>What became of one file.</summary>
/// <param name="Name">Its name.</param>
/// <param name="What">"weather of station yard", "logbook", "round sheet".</param>
/// <param name="Refused">Nothing of it was used.</param>
/// <param name="Known">It was taken in before; nothing is new.</param>
/// <param name="RowsRead">Rows that count.</param>
/// <param name="RowsSetAside">Rows with a value that does not.</param>
/// <param name="RowsRefused">Rows that do not count.</param>
/// <param name="Problems">One line each, with the place.</param>
public sealed record IntakeReport(
    string Name, string What, bool Refused, bool Known, long RowsRead, long RowsSetAside, long RowsRefused, IReadOnlyList<string> Problems)
{
    /// <summary>What a round sheet that came back has put into the logbook, as it counts; nothing where all of it was there before.</summary>
    public IReadOnlyList<LogEntry> Booked { get; init; } = [];

    /// <summary>How a file's report ends.</summary>
    public string Counts => FormattableString.Invariant($"{RowsRead} rows read, {RowsSetAside} set aside, {RowsRefused} refused");

    public static IntakeReport ForRefused(string name, string why) => new(name, "", Refused: true, Known: false, 0, 0, 0, [why]);
}

/// <summary>
/// Takes one file's bytes into the ledger: tells what it is, reads it, keeps bytes and meaning in one step, and derives again what
/// it touches.
/// </summary>
/// <param name="site">Opened for writing, with a description.</param>
/// <param name="now">When the file arrived, UTC.</param>
/// <param name="read">Takes how much of a weather file has been read, 0 to 1; null = nobody watches.</param>
public sealed class FileIntake(OpenSite site, DateTimeOffset now, Action<double>? read = null)
{
    private const string LogbookSource = "logbook";
    private const string RoundSource = "round sheet";

    /// <summary>Enough to tell a header.</summary>
    private const int HeadLength = 4096;

    /// <summary>When and by whom the answers of a round sheet are said.</summary>
    internal RoundSaid Said { get; init; } = new(now, "");

    /// <summary>Takes a file.</summary>
    /// <param name="name">Its name, without a folder: weather is told by it.</param>
    /// <param name="file">Its bytes.</param>
    /// <exception cref="IOException">It changed while it was read; nothing of it was kept, and it can be taken again.</exception>
    public IntakeReport Take(string name, IncomingFile file)
    {
        if (file.Length == 0)
        {
            return IntakeReport.ForRefused(name, $"{name}: it is empty.");
        }

        var head = DescriptionFiles.Decode(file.Head(HeadLength));
        if (LogbookReader.Recognises(head))
        {
            var bytes = file.ReadAll();
            var sheets = LogTargets.Sheets(site);

            // Before the first sheet a logbook is what a place brings along: its rounds wait for the sheets that are made from it.
            return TakeEntries(name, bytes, LogbookSource, LogbookReader.Read(name, DescriptionFiles.Decode(bytes), site.Newest, sheets.Any ? sheets : null));
        }

        if (RoundSheetReader.Recognises(head))
        {
            var bytes = file.ReadAll();
            var reading = RoundSheetReader.Read(name, DescriptionFiles.Decode(bytes), site.Newest, LogTargets.Sheets(site));
            var answers = AnswerTimes.Of(site, [.. reading.Entries.Select(e => e with { By = Said.By })], Said.At);
            var report = TakeEntries(name, bytes, RoundSource, reading with { Entries = answers });
            return report.Refused || report.Known ? report : report with { Booked = answers };
        }

        return ReadingsFile.SourceOf(name, site.Newest.Weather.Sources) is { } source ? TakeWeather(name, file, source) : IntakeReport.ForRefused(name, NothingFits(name));
    }

    /// <summary>Adds entries to the logbook and derives again what they touch.</summary>
    public LogAdded Add(IReadOnlyList<LogEntry> entries, long? fromFile = null)
    {
        LogAdded? added = null;
        site.Ledger.InOneStep(() =>
        {
            var before = site.Ledger.Logbook.Effective();
            added = site.Ledger.Logbook.Add([.. entries.Select(e => OfItsIssue(e, before))], now, fromFile);
            Touch(TouchedDays.Differences(before, site.Ledger.Logbook.Effective()));
        });
        return added!;
    }

    /// <summary>
    /// A round that names no issue speaks of the one that is there when it comes in, whatever is issued later. The same row again speaks of the same one.
    /// </summary>
    private LogEntry OfItsIssue(LogEntry entry, IReadOnlyList<LogEntry> before)
    {
        if (entry is not { Kind: LogKind.Round, Issue: null, Sheet: { } sheet })
        {
            return entry;
        }

        return before.FirstOrDefault(e => e.Kind == LogKind.Round && e.Sheet == sheet && e.Identity == entry.Identity) is { } known
            ? entry with { Issue = known.Issue }
            : entry with { Issue = site.Ledger.Sheets.Issued(sheet, sheet).Select(s => (int?)s.Issue).Max() };
    }

    private IntakeReport TakeEntries(string name, byte[] bytes, string source, LogbookReading reading)
    {
        IReadOnlyList<string> problems = [.. reading.Problems.Select(p => p.ToString())];
        if (reading.RowsRead == 0 && reading.RowsRefused > 0)
        {
            return new(name, source, Refused: true, Known: false, 0, 0, reading.RowsRefused, problems);
        }

        var known = false;
        site.Ledger.InOneStep(() =>
        {
            var stored = site.Ledger.Files.Store(name, source, bytes, now);
            known = stored.Outcome == FileOutcome.AlreadyKnown;
            Add(reading.Entries, stored.Seq);
            site.Ledger.Files.SetRead(new FileRead(stored.Seq, "", reading.RowsRead, 0, reading.RowsRefused, string.Join('\n', problems)));
        });
        return new(name, source, Refused: false, known, reading.RowsRead, 0, reading.RowsRefused, problems);
    }

    /// <summary>
    /// Takes a file of which it is known whose weather it is. One step: the bytes and the days are kept together, or, where nothing can
    /// be read, neither.
    /// </summary>
    /// <param name="name">Its name.</param>
    /// <param name="file">Its bytes.</param>
    /// <param name="source">Whose weather it is.</param>
    /// <param name="notice">What the next sheet has to say of what was taken, kept in the same step; null = nothing.</param>
    /// <exception cref="IOException">It changed while it was read; nothing of it was kept, and it can be taken again.</exception>
    public IntakeReport TakeWeather(string name, IncomingFile file, WeatherSource source, Func<IntakeReport, string?>? notice = null)
    {
        var maps = ColumnMaps.Of(source.Id, site.Versions);
        var what = source.IsForecast ? "forecast" : $"weather of station {source.Id}";
        IntakeReport? taken = null;
        try
        {
            site.Ledger.InOneStep(() =>
            {
                taken = StoreAndRead(name, what, file, source, maps);
                if (!file.IsUnchanged)
                {
                    throw new IOException($"{name} changed while it was being read. It will be read again when it has come to rest.");
                }

                if (notice?.Invoke(taken) is { } sentence)
                {
                    site.Ledger.Notices.Add(sentence);
                }
            });
        }
        catch (NothingUsedException refusal)
        {
            return new(name, what, Refused: true, Known: false, 0, 0, 0, Lines(refusal.Report));
        }

        return taken!;
    }

    /// <exception cref="NothingUsedException">The file is refused.</exception>
    private IntakeReport StoreAndRead(string name, string what, IncomingFile file, WeatherSource source, ColumnMaps maps)
    {
        FileReading? reading = null;
        try
        {
            using var content = file.Open();
            var stored = site.Ledger.Files.Store(
                name, source.Id, content, now, placed => reading = new FileReading(name, source.IsForecast ? 0 : placed.From, maps, () => file.Open(read)));
            return reading is null ? Known(name, what, stored.Seq) : Keep(name, what, reading, new ReadingsKeeper(site, source.Id, stored.Seq, maps.Sha));
        }
        finally
        {
            reading?.Dispose();
        }
    }

    private IntakeReport Keep(string name, string what, FileReading reading, ReadingsKeeper keeper)
    {
        var changed = keeper.Keep(reading);
        var report = reading.Report;
        if (report.FileRefused)
        {
            throw new NothingUsedException(report);
        }

        if (changed is { } days)
        {
            WeatherBook.Touch(site, days.First, days.Last);
        }

        return new(name, what, Refused: false, Known: false, report.RowsRead, report.RowsSetAside, report.RowsRefused, Lines(report));
    }

    private static IReadOnlyList<string> Lines(ReadingsReport report) => [.. report.Problems.Select(p => p.ToString())];

    private IntakeReport Known(string name, string what, long seq)
    {
        var before = site.Ledger.Files.ReadOf(seq);
        return new(name, what, Refused: false, Known: true, before?.Read ?? 0, before?.Aside ?? 0, before?.Refused ?? 0, before is null or { Problems: "" } ? [] : before.Problems.Split('\n'));
    }

    private void Touch(IReadOnlyList<LogEntry> changed)
    {
        var clock = site.Newest.Clock;
        if (changed.Count == 0)
        {
            return;
        }

        var rain = changed.Where(e => e.Kind == LogKind.Rain).ToList();
        if (rain.Count > 0)
        {
            // A gauge's next entry begins where this one ends, at most 24 hours later.
            WeatherBook.Touch(site, rain.Min(e => TouchedDays.FirstOf(e, clock)), rain.Max(e => e.Time.Date).AddDays(1));
        }

        site.Ledger.ForgetBalanceFrom(changed.Min(e => TouchedDays.FirstOf(e, clock)));
    }

    private string NothingFits(string name)
    {
        var patterns = string.Join(", ", site.Newest.Weather.Sources.Select(s => $"{s.Files} (station {s.Id})"));
        return $"{name}: it is neither a logbook nor a round sheet by its header, nor weather by its name. "
            + $"Names of weather files: {patterns}. Rename it, or add its pattern to site.yaml.";
    }

    /// <summary>Takes back the step in which a file was stored that nothing of could be used.</summary>
    private sealed class NothingUsedException(ReadingsReport report) : Exception
    {
        public ReadingsReport Report => report;
    }
}
