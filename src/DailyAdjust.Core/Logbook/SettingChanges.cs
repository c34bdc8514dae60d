using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>What a logbook puts on every program.</summary>
internal sealed class SettingChanges
{
    private const double MinutesPerDay = 1440;
    private readonly IReadOnlyList<SiteVersion> _versions;
    private readonly CoveredPrograms _programs;
    private readonly bool _hasOneDial;
    private readonly Dictionary<ProgramKey, List<SettingChange>> _changes = [];

    private SettingChanges(IReadOnlyList<SiteVersion> versions)
    {
        _versions = versions;
        _programs = new CoveredPrograms(versions);
        _hasOneDial = versions.Any(v => v.Site.Controllers.Any(c => OneDial.Of(v.Site, c.Id).Any()));
    }

    /// <summary>The changes of every program of which anything was said, in order of the instants from which they hold; of two at one instant the later arrival stands last.</summary>
    public static Dictionary<ProgramKey, List<SettingChange>> Of(IReadOnlyList<SiteVersion> versions, IReadOnlyList<DialWord> words)
    {
        var changes = new SettingChanges(versions);
        foreach (var word in words)
        {
            changes.Add(word);
        }

        foreach (var program in changes._changes.Where(c => !IsInOrder(c.Value)).Select(c => c.Key).ToList())
        {
            changes._changes[program] = [.. changes._changes[program].OrderBy(change => change.From)];
        }

        return changes._changes;
    }

    /// <summary>Mostly people say things in the order in which they hold.</summary>
    private static bool IsInOrder(List<SettingChange> changes)
    {
        for (var i = 1; i < changes.Count; i++)
        {
            if (changes[i].From < changes[i - 1].From)
            {
                return false;
            }
        }

        return true;
    }

    private void Add(DialWord word)
    {
        var (entry, from, said, sheet) = word;
        switch (entry.Kind)
        {
            case LogKind.Setting when entry.Value is { } percent:
                // Off with an end is what a returned sheet says of a pause.
                AddSetting(entry, new SettingChange(from, said, new Setting(percent)) { Ends = percent == 0 && entry.Sheet is not null ? entry.Until?.Instant(_versions[^1].Site.Clock) : null, PausedBy = entry, IsBySheet = entry.Sheet is not null });
                break;
            case LogKind.Setting when sheet is not null && string.Equals(entry.Text, LogEntry.NotTurned, StringComparison.Ordinal):
                AddNotTurned(entry, said, sheet);
                break;
            case LogKind.Off:
                AddToAll(_programs.By(entry.Where), new SettingChange(from, said, Setting.Off) { IsBySheet = entry.Sheet is not null });
                break;
            case LogKind.Pause when entry.Value is { } minutes:
                AddToAll(_programs.By(entry.Where), new SettingChange(from, said, Setting.Off) { Ends = SettingHistory.PauseEnd(_versions[^1].Site.Clock, from, (int)Math.Round(minutes / MinutesPerDay)), PausedBy = entry, IsBySheet = entry.Sheet is not null });
                break;
            case LogKind.Round when sheet is not null:
                AddRound(word, sheet);
                break;
            default:
                break;
        }
    }

    private void AddSetting(LogEntry entry, SettingChange change)
    {
        List<ProgramKey> programs = [.. _programs.By(entry.Where).Where(p => !ImpossibleSettings.Is(entry, p, _versions))];
        AddToAll(programs, change);
        if (entry.Where.Kind == PlaceKind.Program && new ProgramKey(entry.Where.Name, entry.Where.Item) is var program && programs.Contains(program))
        {
            AddToDial(program, change, entry.Time.Date);
        }
    }

    /// <summary>A returned sheet says that nothing was turned: no number, and no answer to what an earlier sheet asked for.</summary>
    private void AddNotTurned(LogEntry entry, DateTimeOffset said, IssuedSheet sheet)
    {
        var program = new ProgramKey(entry.Where.Name, entry.Where.Item);
        if (!_programs.Has(program))
        {
            return;
        }

        var change = SettingChange.NotTurned(said, sheet);
        Add(program, change);
        foreach (var other in OneDial.Others(program, _versions, sheet.Date))
        {
            Add(other, change with { IsDialOnly = true });
        }
    }

    private void AddRound(DialWord round, IssuedSheet sheet)
    {
        var site = SiteVersions.On(_versions, sheet.Date);
        var nothingToTurn = new SettingChange(round.From, round.Said, Setting: null);
        var isSecondRound = site.Report.IsAfterRound(site.Clock, sheet.Date, sheet.AsOf);
        foreach (var line in sheet.Lines)
        {
            if (!line.Asks && isSecondRound)
            {
                // It says nothing of what the date's first round asked for.
                continue;
            }

            if (round.Entry.Except.Any(e => e.Covers(line.Program)))
            {
                Add(line.Program, SettingChange.NotTurned(round.Said, sheet));
                continue;
            }

            if (!line.Asks)
            {
                // Answered: there was nothing to turn, so what was on it stays.
                Add(line.Program, nothingToTurn);
                continue;
            }

            var change = new SettingChange(round.From, round.Said, line.Percent is { } percent ? new Setting(percent) : Setting.Off)
            {
                Ends = line.PauseDays is { } days ? SettingHistory.PauseEnd(site.Clock, round.From, days) : null,
                PausedBy = round.Entry,
                IsBySheet = true,
            };
            Add(line.Program, change);
            AddToDial(line.Program, change, sheet.Date);
        }
    }

    /// <summary>A number of one program, on the dial of the others of its box.</summary>
    private void AddToDial(ProgramKey program, SettingChange change, DateOnly date)
    {
        if (_hasOneDial && change.Setting is { IsOff: false })
        {
            AddToAll(OneDial.Others(program, _versions, date), change with { IsDialOnly = true });
        }
    }

    private void AddToAll(IEnumerable<ProgramKey> programs, SettingChange change)
    {
        foreach (var program in programs)
        {
            Add(program, change);
        }
    }

    private void Add(ProgramKey program, SettingChange change)
    {
        if (!_changes.TryGetValue(program, out var list))
        {
            _changes[program] = list = [];
        }

        list.Add(change);
    }
}
