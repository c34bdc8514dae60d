using System.Globalization;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Tests.Files.Guess;

/// <summary>The same weather written as one station or another may write it: every choice is thrown.</summary>
internal sealed record WrittenFile(string Text, IReadOnlyList<Reading> Weather, bool Counter)
{
    private static readonly string[] Times =
    [
        "yyyy-MM-dd HH:mm", "yyyy-MM-ddTHH:mm:ss", "MM/dd/yyyy HH:mm", "dd/MM/yyyy HH:mm", "M/d/yyyy h:mm tt", "d/M/yy H:mm",
        "dd.MM.yyyy HH:mm", "yyyy/MM/dd HH:mm:ss", "dd-MMM-yyyy HH:mm", "yyyyMMdd HHmm",
    ];

    public static WrittenFile Of(Dice dice, IReadOnlyList<Reading> weather)
    {
        var sign = dice.OneOf(',', ';', '\t', '|', ' ');
        var comma = sign != ',' && dice.Chance(0.4);
        var pattern = dice.OneOf(Times);
        var apart = (sign == ' ' && pattern.Contains(' ', StringComparison.Ordinal)) || (pattern.Contains(' ', StringComparison.Ordinal) && dice.Chance(0.2));
        var clock = dice.OneOf("local", "standard", "utc", "utc in header", "offset", "epoch");

        // Where blanks part the cells, AM would be a cell of its own.
        pattern = pattern.Contains("tt", StringComparison.Ordinal) && sign == ' ' ? "yyyy-MM-dd HH:mm" : pattern;
        apart = apart && clock is not ("epoch" or "offset");

        var atEnd = dice.Chance(0.5);
        var header = dice.OneOf("brackets", "below", "after", "none");
        var columns = Columns(dice);
        var counter = dice.Chance(0.3);
        var mark = dice.OneOf("", "--", "NA", "-999", "-9999");
        string[] time = clock switch
        {
            "epoch" => ["Epoch"],
            "utc in header" when apart => ["Date_UTC", "Time_UTC"],
            "utc in header" => ["Time_UTC"],
            _ when apart => ["Date", "Time"],
            _ => [dice.OneOf("Time", "Timestamp", "Datum", "Fecha")],
        };
        var lines = new List<string>();
        for (var i = dice.Whole(0, 3); i > 0; i--)
        {
            lines.Add(dice.OneOf("The club's station", "firmware 2.1", "", "logger 7"));
        }

        lines.Add(string.Join(sign, time.Concat(columns.Select(c => HeaderOf(c, header, sign)))));
        if (header is "below")
        {
            lines.Add(string.Join(sign, time.Select(_ => sign == ' ' ? "-" : "").Concat(columns.Select(c => c.Unit.Replace(" ", "", StringComparison.Ordinal)))));
        }

        var rows = new List<string>();
        var total = dice.Between(0, 300, 1);
        foreach (var reading in weather)
        {
            total += reading.RainMm;
            var cells = columns.Select(c =>
            {
                var value = c.Name is "Rain" && counter ? total / c.PerUnit : c.Value(reading);
                return mark.Length > 0 && c.Name is "Temp" or "Humidity" && dice.Chance(0.01) ? mark : Number(value, c.Decimals, comma);
            });
            var at = atEnd ? reading.End : reading.Begin;
            rows.Add(string.Join(sign, TimeCells(at, clock, pattern, apart).Concat(cells)));
        }

        if (dice.Chance(0.2))
        {
            rows.Reverse();
        }

        return new(string.Concat(lines.Concat(rows).Select(line => line + "\n")), weather, counter);
    }

    private static string[] TimeCells(DateTimeOffset at, string clock, string pattern, bool apart)
    {
        var zone = GuessedFile.Place.Clock;
        if (clock is "epoch")
        {
            return [at.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture)];
        }

        if (clock is "offset")
        {
            return [zone.ToLocal(at).ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)];
        }

        var shown = clock switch
        {
            "local" => zone.ToLocal(at).DateTime,
            "standard" => at.UtcDateTime.AddHours(-6),
            _ => at.UtcDateTime,
        };
        var text = shown.ToString(pattern, CultureInfo.InvariantCulture);
        return apart ? text.Split(' ', 2) : [text];
    }

    private static string HeaderOf(WrittenColumn column, string style, char sign) => style switch
    {
        "brackets" => sign == ' ' ? $"{column.Name}({column.Unit.Replace(" ", "", StringComparison.Ordinal)})" : $"{column.Name} ({column.Unit})",
        "after" => $"{column.Name}_{column.Unit.Replace(" ", "", StringComparison.Ordinal)}",
        _ => column.Name,
    };

    private static List<WrittenColumn> Columns(Dice dice)
    {
        List<WrittenColumn> columns =
        [
            dice.OneOf(new WrittenColumn("Temp", "°C", 2, 1, r => r.AirTemperatureC), new WrittenColumn("Temp", "°F", 2, 1, r => (r.AirTemperatureC * 1.8) + 32), new WrittenColumn("Temp", "K", 2, 1, r => r.AirTemperatureC + 273.15)),
            new WrittenColumn("Humidity", "%", 0, 1, r => r.RelativeHumidityPercent),
            dice.OneOf(
                new WrittenColumn("Wind", "m/s", 2, 1, r => r.WindSpeedMPerS), new WrittenColumn("Wind", "mph", 2, 1, r => r.WindSpeedMPerS / 0.44704),
                new WrittenColumn("Wind", "km/h", 2, 1, r => r.WindSpeedMPerS * 3.6), new WrittenColumn("Wind", "km", 4, 1, r => r.WindSpeedMPerS * (r.End - r.Begin).TotalSeconds / 1000)),
            dice.OneOf(
                new WrittenColumn("Solar", "W/m²", 1, 1, r => r.SolarRadiationMJPerM2 * 1e6 / (r.End - r.Begin).TotalSeconds),
                new WrittenColumn("Solar", "MJ/m²", 5, 1, r => r.SolarRadiationMJPerM2), new WrittenColumn("Solar", "ly", 3, 1, r => r.SolarRadiationMJPerM2 / 0.04184)),
            dice.OneOf(new WrittenColumn("Rain", "mm", 2, 1, r => r.RainMm), new WrittenColumn("Rain", "in", 3, 25.4, r => r.RainMm / 25.4)),
        ];
        if (dice.Chance(0.5))
        {
            columns.Insert(dice.Whole(0, 5), new("Gust", "m/s", 1, 1, r => r.WindSpeedMPerS * 1.8));
            columns.Insert(dice.Whole(0, 5), new("SoilTemp", "°C", 1, 1, _ => 15));
            columns.Insert(dice.Whole(0, 5), new("Battery", "V", 1, 1, _ => 12.6));
        }

        return columns;
    }

    private static string Number(double value, int decimals, bool comma)
    {
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return comma ? text.Replace('.', ',') : text;
    }

    private sealed record WrittenColumn(string Name, string Unit, int Decimals, double PerUnit, Func<Reading, double> Value);
}
