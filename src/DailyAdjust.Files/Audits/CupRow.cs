using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Audits;

/// <summary>One cup as far as its row could be read, in metric; null = the cell is empty, or what is wrong with it has been told.</summary>
/// <param name="Line">Of the row.</param>
/// <param name="Stations">Which ran, in the order of stations.csv; empty = not known, which has been told.</param>
/// <param name="Cup">Its name; may be empty.</param>
/// <param name="Caught">L or mm, as the file gives it.</param>
/// <param name="ThroatM2">Its opening.</param>
/// <param name="Unread">Columns whose cell says something that could not be read.</param>
internal sealed record CupReading(
    int Line, IReadOnlyList<Station> Stations, string Cup, double? Caught, double? ThroatM2, double? RunMinutes, double? WindMPerS, IReadOnlySet<string> Unread);

/// <summary>A row of a file of catch cups while it is being read.</summary>
internal sealed class CupRow(CsvRow row, CupColumns columns, Site site, ProblemList problems)
{
    public static readonly Limits DepthMm = new(0, 500);

    private static readonly Limits VolumeL = new(0, 10);
    private static readonly Limits ThroatM2 = new(0, 1, AboveMin: true);
    private static readonly Limits DiameterM = new(0, 1, AboveMin: true);
    private static readonly Limits RunMinutes = new(0, 1440, AboveMin: true);
    private static readonly Limits WindMPerS = new(0, 50);

    private readonly HashSet<string> _unread = [];

    /// <summary>What it says; what is wrong with it is told.</summary>
    public CupReading Read()
    {
        var fits = row.Fits(columns.Width, problems);
        var stations = Stations();
        var volume = Number(CupColumns.Volume, VolumeL);
        var depth = Number(CupColumns.Depth, DepthMm);
        if (fits && columns.Has(columns.Caught) && columns.Cell(row, columns.Caught).Length == 0)
        {
            Wrong(columns.Caught, $"{columns.Caught} is empty", "write 0 for a cup that stayed dry; take out the row of one that tipped over");
        }

        var area = Number(CupColumns.ThroatArea, ThroatM2);
        var diameter = Number(CupColumns.ThroatDiameter, DiameterM);
        var minutes = Number(CupColumns.RunTime, RunMinutes);
        var wind = Number(CupColumns.Wind, WindMPerS);
        if (!fits)
        {
            // A delimiter too many moves what stands behind it: no cell can be held against those of other rows.
            _unread.UnionWith([columns.Caught, columns.Throat, CupColumns.RunTime, CupColumns.Wind]);
            return new(row.Line, stations, columns.Cell(row, CupColumns.Cup), null, null, null, null, _unread);
        }

        return new(row.Line, stations, columns.Cell(row, CupColumns.Cup), columns.Has(CupColumns.Volume) ? volume : depth, area ?? (diameter is { } d ? Math.PI / 4 * d * d : null), minutes, wind, _unread);
    }

    /// <summary>One address, or several parted by blanks; none where one of them is wrong.</summary>
    private IReadOnlyList<Station> Stations()
    {
        if (!columns.Has(CupColumns.Where))
        {
            return [];
        }

        var found = new HashSet<StationKey>();
        var addresses = columns.Cell(row, CupColumns.Where).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        foreach (var address in addresses)
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

        if (addresses.Length == 0)
        {
            Wrong(CupColumns.Where, "where is empty", "write the station that ran, such as C1/3; several that water the same ground with a blank between");
        }

        return _unread.Contains(CupColumns.Where) ? [] : [.. site.Stations.Where(s => found.Contains(s.Key))];
    }

    private void Unknown(string address)
    {
        string[] known = [.. site.Stations.Select(s => s.Key.ToString())];
        Wrong(
            CupColumns.Where,
            $"there is no station {Wording.Quote(address)} in stations.csv",
            Wording.Nearest(address, known) is { } nearest ? $"did you mean {Wording.Quote(nearest)}?" : $"write controller/station, such as {known[0]}");
    }

    /// <summary>Of a column without a known unit only whether it is a number can be told.</summary>
    private double? Number(string column, Limits limits)
    {
        var text = columns.Cell(row, column);
        if (text.Length == 0)
        {
            return null;
        }

        var unit = columns.UnitOf(column);
        var number = MeasuredCell.Number(column, text, unit, unit is null ? new(double.NegativeInfinity, double.PositiveInfinity) : limits, row.Line, columns.Place(column), problems);
        if (number is null || unit is null)
        {
            _unread.Add(column);
            return null;
        }

        return number;
    }

    private void Wrong(string column, string what, string hint)
    {
        _unread.Add(column);
        problems.Error(row.Line, columns.Place(column), what, hint);
    }
}
