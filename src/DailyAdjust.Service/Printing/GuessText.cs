using System.Globalization;
using System.Text;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Guess;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Printing;

/// <summary>A guess in words: what was recognised and how sure, the first days, what reading found, and what to paste.</summary>
internal static class GuessText
{
    private const int ProblemsShown = 8;
    private const int Width = 118;

    /// <summary>What was recognised, or seen.</summary>
    public static string Findings(WeatherGuess guess)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{guess.File}: {guess.What}\n\n");
        var before = "";
        foreach (var finding in guess.Findings)
        {
            var sure = finding.IsSure ? "     " : "check";
            var name = finding.Key.StartsWith("columns.", StringComparison.Ordinal) ? finding.Key["columns.".Length..] : finding.Key;
            text.Append(CultureInfo.InvariantCulture, $"  {sure} {name,-19} {finding.Value}\n");
            Wrap(text, string.Equals(finding.Why, before, StringComparison.Ordinal) ? "by the same" : finding.Why);
            before = finding.Why;
        }

        if (guess.Left.Count > 0)
        {
            text.Append("\nNot used:\n");
            foreach (var left in guess.Left)
            {
                text.Append(CultureInfo.InvariantCulture, $"  \"{left.Header}\": {left.Why}\n");
            }
        }

        return OneScreen(text);
    }

    /// <summary>The first days as they would be read, and the problems that reading found.</summary>
    /// <param name="trial">The file read as proposed.</param>
    /// <param name="units">In which they are shown.</param>
    /// <param name="placeKnown">Reference ET needs latitude, longitude, elevation and time zone.</param>
    /// <param name="zone">By whose clock the days are cut.</param>
    public static string Trial(GuessTrial trial, UnitSystem units, bool placeKnown, string zone)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"\nThe first days as they would be read (days of {zone}):\n\n");
        text.Append(trial.Days.Count == 0 ? "  none\n" : Days(trial.Days, units == UnitSystem.Us, placeKnown).ToText());
        text.Append(placeKnown ? "" : "\nReference ET needs --latitude, --longitude, --elevation and --time-zone, or --site.\n");
        var report = trial.Report;
        text.Append(CultureInfo.InvariantCulture, $"\nThe whole file: {report.RowsRead} rows read, {report.RowsSetAside} set aside, {report.RowsRefused} refused{(report.FileRefused ? "; read as proposed the file is refused" : "")}\n");
        foreach (var problem in report.Problems.Take(ProblemsShown))
        {
            text.Append(CultureInfo.InvariantCulture, $"  {problem}\n");
        }

        text.Append(report.Problems.Count > ProblemsShown ? FormattableString.Invariant($"  ... and {report.Problems.Count - ProblemsShown} more\n") : "");
        return OneScreen(text);
    }

    /// <summary>The piece of site.yaml.</summary>
    public static string Paste(WeatherGuess guess)
    {
        var open = guess.Findings.Count(finding => !finding.IsSure);
        var note = open == 0 ? "" : FormattableString.Invariant($" ({open} of its lines say what to check)");
        return $"\nAfter a first morning an edit holds from the next day on; \"correct: true\" under site: says that it was always so.\nFor site.yaml{note}:\n\n{GuessYaml.Weather(guess)}";
    }

    private static Table Days(IReadOnlyList<TrialDay> days, bool us, bool placeKnown)
    {
        var (degree, speed, depth) = us ? ("°F", "mph", "in") : ("°C", "m/s", "mm");
        List<string> columns = ["date", "rows", "Tmax " + degree, "Tmin " + degree, "RH %", "wind " + speed, "sun MJ/m²", "rain " + depth];
        return new([.. columns, .. placeKnown ? new[] { "ETo " + depth, "known" } : Array.Empty<string>()], [.. days.Select(IReadOnlyList<Cell> (day) => Row(day, us, placeKnown))]);
    }

    private static List<Cell> Row(TrialDay day, bool us, bool placeKnown)
    {
        var rain = Sum(day, r => r.RainMm) ?? day.Day.Rain[0].RainMm ?? (day.Readings.Any(r => !double.IsNaN(r.RainCounterMm)) ? day.Day.Rain[0].MeasuredPartMm : null);
        List<Cell> cells =
        [
            Cell.Date(day.Date),
            Cell.Fixed(day.Readings.Count, 0),
            Cell.Fixed(Temperature(Values(day, r => Known(r.AirTemperatureMaxC, r.AirTemperatureC)).Max(), us), 1),
            Cell.Fixed(Temperature(Values(day, r => Known(r.AirTemperatureMinC, r.AirTemperatureC)).Min(), us), 1),
            Cell.Fixed(Values(day, r => Known(r.RelativeHumidityPercent, (r.RelativeHumidityMaxPercent + r.RelativeHumidityMinPercent) / 2)).Average(), 0),
            Cell.Fixed(Values(day, r => r.WindSpeedMPerS).Average() / (us ? Units.MPerSPerMph : 1), 1),
            Cell.Fixed(Sum(day, r => r.SolarRadiationMJPerM2), 1),
            Cell.Fixed(Depth(rain, us), us ? 2 : 1),
        ];
        if (placeKnown)
        {
            cells.Add(Cell.Fixed(Depth(day.Day.EtoMm, us), us ? 3 : 2));
            cells.Add(Cell.Text(day.Day.EtoMm is null ? "" : WeatherTable.Of([day.Day]).Rows[0][3].Written));
        }

        return cells;
    }

    /// <summary>Null where there is none, so that a missing value stays missing in sums, means and extremes.</summary>
    private static IEnumerable<double?> Values(TrialDay day, Func<Reading, double> value) =>
        day.Readings.Select(value).Where(v => !double.IsNaN(v)).Select(v => (double?)v);

    private static double? Sum(TrialDay day, Func<Reading, double> value) => Values(day, value).Any() ? Values(day, value).Sum() : null;

    private static double Known(double first, double second) => double.IsNaN(first) ? second : first;

    private static double? Temperature(double? c, bool us) => us ? (c * 1.8) + 32 : c;

    private static double? Depth(double? mm, bool us) => us ? mm / 25.4 : mm;

    /// <summary>The reason below its finding, in lines that fit a terminal.</summary>
    private static void Wrap(StringBuilder text, string why)
    {
        const string Indent = "          ";
        var line = new StringBuilder(Indent);
        foreach (var word in why.Split(' '))
        {
            if (line.Length + 1 + word.Length > Width && line.Length > Indent.Length)
            {
                text.Append(line).Append('\n');
                line.Clear().Append(Indent);
            }

            line.Append(line.Length > Indent.Length ? " " : "").Append(word);
        }

        text.Append(line).Append('\n');
    }

    /// <summary>Nothing from a file may move the cursor.</summary>
    private static string OneScreen(StringBuilder text) => string.Concat(text.ToString().Select(c => char.IsControl(c) && c != '\n' ? ' ' : c));
}
