using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>A setting that was logged though the box cannot be set to it: nobody knows what stands on the dial.</summary>
/// <param name="Controller">The box, with its range as it was then.</param>
/// <param name="Programs">Of that box, those that it was said of and that nobody has spoken of since; in the controller's order.</param>
/// <param name="Entry">Its value is above 0.</param>
public sealed record ImpossibleSetting(Controller Controller, IReadOnlyList<ProgramKey> Programs, LogEntry Entry);

/// <summary>Settings beyond the range of their dial. They are kept and asked about, and never counted with.</summary>
public static class ImpossibleSettings
{
    /// <summary>Whether an entry is a setting that a program's controller cannot show.</summary>
    public static bool Is(LogEntry entry, ProgramKey program, IReadOnlyList<SiteVersion> versions) =>
        entry.Kind == LogKind.Setting && entry.Value is { } percent and > 0 && ControllerOf(program, entry, versions) is { } controller && !controller.IsInRange(percent);

    /// <summary>Those that no later word about the program has settled, in order of arrival.</summary>
    public static IReadOnlyList<ImpossibleSetting> Open(IReadOnlyList<SiteVersion> versions, IReadOnlyList<LogEntry> log, SettingHistory settings)
    {
        var site = versions[^1].Site;
        var (open, covered) = (new List<ImpossibleSetting>(), new CoveredPrograms(versions));
        for (var i = 0; i < log.Count; i++)
        {
            var entry = log[i];
            if (entry.Kind != LogKind.Setting || covered.By(entry.Where).Where(p => Is(entry, p, versions)).ToHashSet() is not { Count: > 0 } impossible)
            {
                continue;
            }

            var instant = entry.Time.Instant(site.Clock);
            var later = log.Skip(i + 1);
            foreach (var controller in site.Controllers)
            {
                List<ProgramKey> programs = [.. controller.Programs
                    .Select(p => new ProgramKey(controller.Id, p.Id))
                    .Where(p => impossible.Contains(p) && !(settings.LastNumber(p) > instant)
                        && !later.Any(e => e is { Kind: LogKind.Off } or { Kind: LogKind.Setting, Value: not null } && e.Where.Covers(p) && e.Time.Instant(site.Clock) == instant && !Is(e, p, versions)))];
                if (programs.Count > 0)
                {
                    open.Add(new ImpossibleSetting(ControllerOf(programs[0], entry, versions)!, programs, entry));
                }
            }
        }

        return open;
    }

    /// <summary>As it was when the setting was made; null = there was none.</summary>
    private static Controller? ControllerOf(ProgramKey program, LogEntry entry, IReadOnlyList<SiteVersion> versions) =>
        SiteVersions.On(versions, entry.Time.Date).ControllerOf(program.Controller);
}
