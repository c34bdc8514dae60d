using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Sites;

/// <summary>A station and where stations.csv describes it.</summary>
internal sealed record StationDraft(Station Station, int Line, StationColumns Columns);

/// <summary>stations.csv: a spreadsheet that a person keeps, one row per station.</summary>
internal static class StationsReader
{
    /// <summary>Stations in the order of the file; rows with problems are left out, having been told.</summary>
    public static IReadOnlyList<StationDraft> Read(string csvText, SiteDraft draft, ProblemList problems)
    {
        var rows = CsvRows.Read(csvText, problems);
        if (rows.Count == 0)
        {
            return [];
        }

        var columns = StationColumns.Read(rows[0], draft.Site.Controllers, problems);
        var stations = new List<StationDraft>();
        var lines = new Dictionary<(string, string), int>();
        foreach (var row in rows.Skip(columns.Complete ? 1 : rows.Count))
        {
            if (new StationRow(row, columns, draft, problems).Read() is not { } station)
            {
                continue;
            }

            var key = (station.Key.Controller, station.Key.Station.ToUpperInvariant());
            if (lines.TryGetValue(key, out var first))
            {
                problems.Error(row.Line, columns.Place(StationColumns.Station), FormattableString.Invariant($"station {station.Key} stands there twice; the first is in line {first}"), "give each its own number");
                continue;
            }

            lines.Add(key, row.Line);
            stations.Add(new(station, row.Line, columns));
        }

        if (rows.Count == 1)
        {
            problems.Error(rows[0].Line, 1, "there is no station", "write one row per station below the header");
        }

        return stations;
    }
}
