using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Audits;

/// <summary>One cup as its row says it, in metric; null = the cell is empty.</summary>
/// <param name="Line">Of the row.</param>
/// <param name="Stations">Which ran, in the order of stations.csv.</param>
/// <param name="Cup">Its name; may be empty.</param>
/// <param name="Caught">L or mm, as the file gives it.</param>
/// <param name="ThroatM2">Its opening.</param>
internal sealed record CupReading(int Line, IReadOnlyList<Station> Stations, string Cup, double Caught, double? ThroatM2, double? RunMinutes, double? WindMPerS);

/// <summary>A row of a file of catch cups while it is being read.</summary>
internal sealed class CupRow(CsvRow row, CupColumns columns, Site site, ProblemList problems)
{
    public static readonly Limits DepthMm = new(0, 500);

    private static readonly Limits VolumeL = new(0, 10);
    private static readonly Limits ThroatM2 = new(0, 1, AboveMin: true);
    private static readonly Limits DiameterM = new(0, 1, AboveMin: true);
    private static readonly Limits RunMinutes = new(0, 1440, AboveMin: true);
    private static readonly Limits WindMPerS = new(0, 50);

    private bool _bad;

    /// <summary>The cup, or null when anything in the row is wrong.</summary>
    public CupReading? Read()
    {
        _bad = !row.Fits(columns.Width, problems);
        var stations = Stations();
        var caught = Number(columns.Caught, columns.Has(CupColumns.Volume) ? VolumeL : DepthMm);
        if (caught is null && !_bad)
        {
            Wrong(columns.Caught, $"{columns.Caught} is empty", "write 0 for a cup that stayed dry; take out the row of one that tipped over");
        }

        var area = Number(CupColumns.ThroatArea, ThroatM2);
        var diameter = Number(CupColumns.ThroatDiameter, DiameterM);
        var minutes = Number(CupColumns.RunTime, RunMinutes);
        var wind = Number(CupColumns.Wind, WindMPerS);
        return _bad ? null : new(row.Line, stations, columns.Cell(row, CupColumns.Cup), caught!.Value, area ?? (diameter is { } d ? Math.PI / 4 * d * d : null), minutes, wind);
    }

    /// <summary>One address, or several parted by blanks.</summary>
    private IReadOnlyList<Station> Stations()
    {
        var found = new HashSet<StationKey>();
        foreach (var address in columns.Cell(row, CupColumns.Where).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (PlaceText.Find(address, site, stationFirst: true) is not { Kind: PlaceKind.Station } place)
            {
                Unknown(address);
            }
            else if (!found.Add(new(place.Name, place.Item)))
            {
                Wrong(CupColumns.Where, $"{address} stands there twice", "name each station once");
            }
        }

        if (found.Count == 0 && !_bad)
        {
            Wrong(CupColumns.Where, "where is empty", "write the station that ran, such as C1/3; several that water the same ground with a blank between");
        }

        return [.. site.Stations.Where(s => found.Contains(s.Key))];
    }

    private void Unknown(string address)
    {
        string[] known = [.. site.Stations.Select(s => s.Key.ToString())];
        Wrong(
            CupColumns.Where,
            $"there is no station {Wording.Quote(address)} in stations.csv",
            Wording.Nearest(address, known) is { } nearest ? $"did you mean {Wording.Quote(nearest)}?" : $"write controller/station, such as {known[0]}");
    }

    private double? Number(string column, Limits limits)
    {
        var text = columns.Cell(row, column);
        if (text.Length == 0)
        {
            return null;
        }

        var number = MeasuredCell.Number(column, text, columns.UnitOf(column), limits, row.Line, columns.Place(column), problems);
        _bad |= number is null;
        return number;
    }

    private void Wrong(string column, string what, string hint)
    {
        _bad = true;
        problems.Error(row.Line, columns.Place(column), what, hint);
    }
}
