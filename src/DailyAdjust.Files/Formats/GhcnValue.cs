using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Formats;

/// <summary>One value of GHCN-Daily with its flags, as each of its three layouts has it.</summary>
/// <param name="rows">Takes what is wrong.</param>
/// <param name="source">When its observer reads, if the site says so.</param>
internal sealed class GhcnValue(FormatRows rows, WeatherSource source)
{
    private const int Missing = -9999;
    private const int MostDays = 366;
    private const string MeasurementFlags = " BDHKLOPTW";

    /// <summary>Puts a value where it belongs, or says why not.</summary>
    /// <param name="row">Takes it.</param>
    /// <param name="name">Of the element.</param>
    /// <param name="date">As the file has it.</param>
    /// <param name="text">The number, without blanks.</param>
    /// <param name="flags">Measurement, quality and source flag; a blank for none.</param>
    /// <param name="observedAt">The time of the observation if the file has it; the site's comes before it.</param>
    /// <param name="line">Where.</param>
    /// <param name="column">Where.</param>
    public void Take(RowValues row, string name, DateOnly date, ReadOnlySpan<char> text, (char M, char Q, char S) flags, TimeOnly? observedAt, int line, int column)
    {
        if (GhcnElement.Find(name) is not { } element)
        {
            return;
        }

        if (!FormatText.TryWhole(text, out var number))
        {
            rows.SetAside(row, name, line, column, text, "is not a whole number", "The format has whole numbers only; get the file again");
            return;
        }

        if (number == Missing)
        {
            return;
        }

        if (!MeasurementFlags.Contains(flags.M, StringComparison.Ordinal) || !IsFlag(flags.Q) || !IsFlag(flags.S))
        {
            rows.SetAside(row, name, line, column, [flags.M, flags.Q, flags.S], "are not flags of the format", "What they would say of the value is not known; get the file again");
            return;
        }

        var day = WindowOf(element, date, flags.S, observedAt);
        var raw = FormattableString.Invariant($"{number} {flags.M}{flags.Q}{flags.S}").TrimEnd();
        if (flags.Q != ' ')
        {
            row.Mark(day, element.Quantity, MarkKind.FailedAtSource, raw);
        }
        else if (element.Kind == GhcnNumber.OfSeveralDays)
        {
            row.Mark(day, element.Quantity, MarkKind.SeveralDays, $"{name} {raw}");
        }
        else if (flags.M == 'P')
        {
            row.Mark(day, element.Quantity, MarkKind.IncompleteAtSource, raw);
        }
        else if (number < (IsAmount(element.Quantity) ? 0 : Missing) || (flags.M == 'T' && number != 0) || (element.Kind == GhcnNumber.CountOfDays && number is < 1 or > MostDays))
        {
            rows.SetAside(row, name, line, column, raw, "cannot be", "The publisher's flag and number do not go together; get the file again");
        }
        else if (element.Kind == GhcnNumber.CountOfDays)
        {
            MarkDays(row, element, day, number);
        }
        else
        {
            row.Put(day, element.Quantity, number / element.PerUnit);
            MarkKnown(row, element, day, flags, raw);
        }
    }

    private static void MarkKnown(RowValues row, GhcnElement element, DayWindow day, (char M, char Q, char S) flags, string raw)
    {
        var isExtreme = element.Quantity is WeatherQuantity.AirTemperatureMax or WeatherQuantity.AirTemperatureMin;
        if (flags.M == 'T')
        {
            row.Mark(day, element.Quantity, MarkKind.Trace, raw);
        }
        else if (flags.M == 'L' || (flags.M == 'H' && isExtreme) || (flags.S == 'S' && element.Quantity == WeatherQuantity.Rain))
        {
            // L: the temperature seems to lag behind its hour. H: only as high or low as the hours were. S: added up from synoptic reports.
            row.Mark(day, element.Quantity, MarkKind.EstimatedAtSource, raw);
        }
    }

    /// <summary>All days of a total are unknown, not 0, whatever else the file leaves out.</summary>
    private static void MarkDays(RowValues row, GhcnElement element, DayWindow last, int days)
    {
        for (var back = days - 1; back >= 0; back--)
        {
            row.Mark(last with { Date = last.Date.AddDays(-back) }, element.Quantity, MarkKind.SeveralDays, FormattableString.Invariant($"in {days} days to {last.Date:yyyy-MM-dd}"));
        }
    }

    /// <summary>Means of source S are of the day in UTC (from memory).</summary>
    private DayWindow WindowOf(GhcnElement element, DateOnly date, char sourceFlag, TimeOnly? observedAt) =>
        element.Quantity == WeatherQuantity.AirTemperature && sourceFlag == 'S' ? DayWindow.Utc(date, rows.Clock)
        : (source.ObservedAt ?? observedAt) is { } at ? DayWindow.EndingAt(date, at)
        : new(date);

    private static bool IsFlag(char flag) => flag == ' ' || char.IsAsciiLetter(flag) || char.IsAsciiDigit(flag);

    private static bool IsAmount(WeatherQuantity quantity) => quantity is WeatherQuantity.Rain or WeatherQuantity.WindSpeed or WeatherQuantity.Sunshine
        or WeatherQuantity.RelativeHumidity or WeatherQuantity.RelativeHumidityMax or WeatherQuantity.RelativeHumidityMin;
}
