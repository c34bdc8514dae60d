using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;
using DailyAdjust.Tests.Files.Readings;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>A file without faults: its header, and rows that are one line each.</summary>
/// <param name="Source">Null = it has a reader of its own.</param>
internal sealed record GoodFile(string Name, WeatherSource? Source, IReadOnlyList<string> Header, IReadOnlyList<string> Rows)
{
    public Result Read(byte[] bytes)
    {
        if (Source is not null)
        {
            return FormatFile.Read(Source, bytes);
        }

        using var stream = new MemoryStream(bytes);
        var epw = EpwReader.Read("typical.epw", stream);
        return new Result(epw.Readings, [new ReadingDay(default, epw.Readings)], epw.Report);
    }
}

/// <summary>One of every format, invented: a dozen rows of June.</summary>
internal static class GoodFiles
{
    public static readonly WeatherSource Gridpoint = FormatFile.Source("gridpoint") with { Interval = TimeSpan.FromHours(1) };

    private static readonly WeatherSource Counter = StationFile.Plain with
    {
        Columns = new Dictionary<WeatherQuantity, MappedColumn>
        {
            [WeatherQuantity.AirTemperature] = new("Temp (°C)", null),
            [WeatherQuantity.Rain] = new("Rain total (mm)", null, Counter: true),
        },
    };

    public const string GridpointText = """
        {
          "properties": {
            "gridId": "XYZ",
            "updateTime": "2026-06-08T09:12:00+00:00",
            "temperature": {
              "uom": "wmoUnit:degC",
              "values": [
                { "validTime": "2026-06-08T09:00:00+00:00/PT1H", "value": 14.5 },
                { "validTime": "2026-06-08T10:00:00+00:00/PT2H", "value": 16 },
                { "validTime": "2026-06-08T12:00:00+00:00/PT1H", "value": null } ] },
            "windSpeed": {
              "uom": "wmoUnit:km_h-1",
              "values": [
                { "validTime": "2026-06-08T09:00:00+00:00/PT3H", "value": 18 } ] },
            "quantitativePrecipitation": {
              "uom": "wmoUnit:mm",
              "values": [
                { "validTime": "2026-06-08T06:00:00+00:00/PT6H", "value": 3 } ] }
          }
        }
        """;

    public static IReadOnlyList<GoodFile> ByLines { get; } =
    [
        new("station csv", StationFile.Plain, [StationFile.PlainHeader.TrimEnd()], Rows(i => $"2026-06-01 {i:00}:00,{20 + (i / 10.0):0.0},{1 + (i / 10.0):0.0},0.{i:00}")),
        new("station csv counter", Counter, ["Time,Temp (°C),Rain total (mm)"], Rows(i => $"2026-06-01 {i:00}:00,{20 + (i / 10.0):0.0},{100 + (i / 5.0):0.0}")),
        new("ghcn dly", FormatFile.Source("ghcn-daily", GhcnText.Yard), [], [.. new[] { "TMAX", "TMIN", "PRCP", "AWND" }.SelectMany((element, e) =>
            new[] { "202605", "202606", "202607" }.Select((month, m) => GhcnText.Month(element, month, Enumerable.Range(1, 30).ToDictionary(d => d, d => FormattableString.Invariant($"{100 + (e * 50) + (m * 40) + d}  7")))))]),
        new("ghcn by year", FormatFile.Source("ghcn-daily", GhcnText.Yard), [], Rows(i => $"{GhcnText.Yard},202606{i:00},{(i % 2 == 0 ? "TMAX" : "PRCP")},{200 + i},,,7,2400")),
        new("ghcn per station", FormatFile.Source("ghcn-daily", GhcnText.Yard), ["\"STATION\",\"DATE\",\"NAME\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"TMAX\",\"TMAX_ATTRIBUTES\""],
            Rows(i => $"\"{GhcnText.Yard}\",\"2026-06-{i:00}\",\"YARD, IL US\",\"   {i}\",\",,7,2400\",\"  {280 + i}\",\",,7,2400\"")),
        new("gsod", FormatFile.Source("gsod", "72530099999"), ["\"STATION\",\"DATE\",\"NAME\",\"TEMP\",\"TEMP_ATTRIBUTES\",\"DEWP\",\"DEWP_ATTRIBUTES\",\"WDSP\",\"WDSP_ATTRIBUTES\",\"MAX\",\"MAX_ATTRIBUTES\",\"MIN\",\"MIN_ATTRIBUTES\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"FRSHTT\""],
            Rows(i => $"\"72530099999\",\"2026-06-{i:00}\",\"YARD, US\",\"  68.{i % 10}\",\"24\",\"  54.{i % 10}\",\"24\",\"  10.{i % 10}\",\"24\",\"  77.{i % 10}\",\" \",\"  59.{i % 10}\",\" \",\" 0.{i:00}\",\"G\",\"010000\"")),
        new("uscrn", FormatFile.Source("uscrn-daily", "03047"), [], Rows(i => $"03047 202606{i:00}  2.622 -102.81   31.62    28.{i % 10}    15.{i % 10}    22.3    21.5     {i % 10}.5    22.{i:00} C    45.1    12.0    26.0    93.1    41.5    66.0 -99.000 -99.000 -99.000 -99.000 -99.000 -9999.0 -9999.0 -9999.0 -9999.0 -9999.0")),
        new("isd-lite", FormatFile.Source("isd-lite"), [], Rows(i => $"2026 06 01 {i:00}   2{i:00}   144 10132   180    {10 + i}     2    {i:00} -9999")),
        new("eccc", FormatFile.Source("eccc-daily", "6150000"), ["\"Station Name\",\"Climate ID\",\"Date/Time\",\"Year\",\"Month\",\"Day\",\"Max Temp (°C)\",\"Max Temp Flag\",\"Min Temp (°C)\",\"Min Temp Flag\",\"Mean Temp (°C)\",\"Mean Temp Flag\",\"Total Precip (mm)\",\"Total Precip Flag\""],
            Rows(i => $"\"YARD\",\"6150000\",\"2026-06-{i:00}\",\"2026\",\"06\",\"{i:00}\",\"28.{i % 10}\",\"\",\"15.{i % 10}\",\"\",\"22.3\",\"\",\"{i}.5\",\"\"")),
        new("dwd", FormatFile.Source("dwd-daily", "44"), ["STATIONS_ID;MESS_DATUM;QN_3;  FX;  FM;QN_4; RSK;RSKF; SDK;SHK_TAG;  NM; VPM;  PM; TMK; UPM; TXK; TNK; TGK;eor"],
            Rows(i => $"         44;202606{i:00};  10;  12.1;   3.1;  10;   {i}.5;   6; 10.500;   0;   4.2;  14.2; 1010.05;  22.3;  66.00;  28.{i % 10};  15.6;  13.0;eor")),
        new("epw", null, [.. EpwText.Header.Split('\n', StringSplitOptions.RemoveEmptyEntries)], Rows(i => EpwText.Row(FormattableString.Invariant($"1999,6,1,{i},60"), rain: FormattableString.Invariant($"{i}.5")).TrimEnd())),
    ];

    private static IReadOnlyList<string> Rows(Func<int, FormattableString> row) => [.. Enumerable.Range(1, 12).Select(i => row(i).ToString(CultureInfo.InvariantCulture))];

    private static IReadOnlyList<string> Rows(Func<int, string> row) => [.. Enumerable.Range(1, 12).Select(row)];
}
