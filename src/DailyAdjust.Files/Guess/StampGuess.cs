using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>The pattern of a file's times, and the times that it gives.</summary>
/// <param name="Pattern">As site.yaml writes it.</param>
/// <param name="Other">What the dates could mean as well; null = nothing else.</param>
/// <param name="Stamps">Of every row; null = not written so.</param>
/// <param name="Why">How it was decided.</param>
internal sealed record StampGuess(string Pattern, string? Other, IReadOnlyList<DateTime?> Stamps, string Why)
{
    /// <summary>No weather file leaves out this much between two rows as a rule.</summary>
    private static readonly TimeSpan Jump = TimeSpan.FromDays(20);

    /// <summary>Rows may be broken, but only few.</summary>
    private const double MostBroken = 0.05;

    /// <param name="monthFirst">Where nothing in the file decides: null = day first is as likely.</param>
    /// <returns>Null = no pattern reads the rows.</returns>
    public static StampGuess? Of(TimeColumns columns, IReadOnlyList<IReadOnlyList<string>> rows, bool? monthFirst)
    {
        List<Candidate> candidates = [.. columns.Patterns.Select(pattern => Candidate.Of(pattern, columns, rows)).OfType<Candidate>()];
        candidates.RemoveAll(c => c.Read == 0);
        if (candidates.Count == 0)
        {
            return null;
        }

        var most = candidates.Max(c => c.Read);
        var readable = candidates.FindAll(c => c.Read >= most - (MostBroken * rows.Count) && c.Read >= (1 - MostBroken) * most);
        if (columns.Patterns.Count == 1)
        {
            return new(readable[0].Pattern, null, readable[0].Stamps, "the only way to read its texts");
        }

        if (readable.Count == 1)
        {
            var refused = rows.Count - candidates.Where(c => c != readable[0]).Select(c => c.Read).DefaultIfEmpty(0).Max();
            return new(readable[0].Pattern, null, readable[0].Stamps, FormattableString.Invariant($"read otherwise, {refused} of {rows.Count} rows would be no dates"));
        }

        var calm = readable.FindAll(c => c.Jumps == 0);
        var wild = readable.FindAll(c => c.Jumps > 0);
        if (calm.Count == 1 && wild.TrueForAll(c => c.Jumps >= 2))
        {
            return new(calm[0].Pattern, null, calm[0].Stamps, FormattableString.Invariant($"so the dates follow one another; as {wild[0].Pattern} they would jump by weeks {wild[0].Jumps} times"));
        }

        var open = calm.Count > 0 ? calm : readable;
        var chosen = (monthFirst is { } wanted ? open.Find(c => c.MonthFirst == wanted) : null) ?? open[0];
        var other = open.Concat(readable).First(c => c != chosen);
        return new(chosen.Pattern, other.Pattern, chosen.Stamps, $"nothing in {rows.Count} rows tells day from month: it may be {other.Pattern} just as well");
    }

    private sealed record Candidate(string Pattern, IReadOnlyList<DateTime?> Stamps)
    {
        public int Read { get; } = Stamps.Count(stamp => stamp is not null);

        /// <summary>Steps of weeks from row to row.</summary>
        public int Jumps { get; } = JumpsIn([.. Stamps.OfType<DateTime>()]);

        public bool MonthFirst => Pattern.IndexOf('M', StringComparison.Ordinal) < Pattern.IndexOf('d', StringComparison.Ordinal);

        public static Candidate? Of(string pattern, TimeColumns columns, IReadOnlyList<IReadOnlyList<string>> rows)
        {
            if (StampPattern.Fault(pattern, daily: true) is not null)
            {
                return null;
            }

            var reader = new StampPattern(new WeatherSource
            {
                Id = "",
                Files = "",
                Format = "csv",
                Columns = new Dictionary<WeatherQuantity, MappedColumn>(),
                Interval = TimeSpan.FromDays(1),
                Time = new TimeColumn("", null, pattern, StampClock.Local, StampMeaning.End),
            });
            return new(pattern, [.. rows.Select(row => Stamp(reader, columns, row))]);
        }

        private static DateTime? Stamp(StampPattern reader, TimeColumns columns, IReadOnlyList<string> row) =>
            row.Count > columns.Column && (columns.TimeOfDay is null || row.Count > columns.TimeOfDay)
            && reader.TryParse(row[columns.Column], columns.TimeOfDay is { } time ? row[time] : "", out var stamp)
                ? stamp
                : null;

        private static int JumpsIn(List<DateTime> stamps)
        {
            var jumps = 0;
            for (var i = 1; i < stamps.Count; i++)
            {
                jumps += (stamps[i] - stamps[i - 1]).Duration() >= Jump ? 1 : 0;
            }

            return jumps;
        }
    }
}
