using System.Globalization;
using System.Text;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Service.Printing;

/// <summary>One program's advice, link by link.</summary>
internal static class ProgramText
{
    /// <summary>Of a box without a percentage.</summary>
    private const string OfMinutes = " of the minutes in stations.csv";

    /// <param name="sheet">Its sheet.</param>
    /// <param name="advice">The program.</param>
    /// <param name="issue">The issue it stands on; null = not issued.</param>
    public static string Of(MorningSheet sheet, ProgramAdvice advice, int? issue)
    {
        var text = new StringBuilder();
        var asOf = sheet.Site.Clock.ToLocal(sheet.AsOf);
        var which = issue is null ? "not issued" : string.Create(CultureInfo.InvariantCulture, $"sheet {sheet.Date:yyyy-MM-dd}/{issue}");
        text.Append(CultureInfo.InvariantCulture, $"{advice.Key} {advice.Name}, {which}, as of {asOf:yyyy-MM-dd HH:mm}\n\n");
        text.Append(CultureInfo.InvariantCulture, $"now      {Present(advice)}{(advice.Confirmed ? "" : " (nobody has confirmed it)")}\n");
        text.Append(CultureInfo.InvariantCulture, $"advice   {AdviceCode.Of(advice.Advice)}{Percent(advice.Percent, advice.MinutesOnly)}{(advice.ExactPercent is { } exact ? string.Create(CultureInfo.InvariantCulture, $", exactly {exact:0.####} %") : "")}\n");
        if (advice.NewMinutes.Count > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"minutes  {string.Join("; ", advice.NewMinutes.Select(m => string.Create(CultureInfo.InvariantCulture, $"station {m.Station.Station}: {m.From:0.##} → {m.To:0.##} min")))}\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"because  {advice.Reason}\n");
        if (advice.NextStart is { } start)
        {
            var end = advice.Finishes is { } finishes ? string.Create(CultureInfo.InvariantCulture, $", ends {sheet.Site.Clock.ToLocal(finishes):HH:mm}") : "";
            text.Append(CultureInfo.InvariantCulture, $"starts   {sheet.Site.Clock.ToLocal(start):yyyy-MM-dd HH:mm}{end}\n");
        }

        text.Append("\nThe chain:\n");
        foreach (var reason in advice.Chain)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {reason.Code}: {reason.Words}\n");
            foreach (var (name, value) in reason.Data)
            {
                text.Append(CultureInfo.InvariantCulture, $"      {name} = {value:0.######}\n");
            }
        }

        text.Append("\nZones (mm):\n").Append(Zones(advice).ToText());
        return text.ToString();
    }

    private static Table Zones(ProgramAdvice advice) => new(
        ["station", "name", "area", "below_full", "allowable", "needs_percent", "can_wait", "due", "set_aside", "past_allowable", "drains"],
        [.. advice.Zones.Select(IReadOnlyList<Cell> (zone) =>
        [
            Cell.Text(zone.Station.ToString()),
            Cell.Text(zone.Name),
            Cell.Text(zone.Area),
            Cell.Fixed(zone.DepletionMm, 4),
            Cell.Fixed(zone.AllowableMm, 4),
            Cell.Fixed(zone.Percent, 4),
            Cell.Text(YesNo(zone.CanWait)),
            Cell.Text(YesNo(zone.Due)),
            Cell.Text(YesNo(zone.SetAside)),
            Cell.Fixed(zone.ShortMm, 4),
            Cell.Fixed(zone.DrainsMm, 4),
        ])]);

    private static string YesNo(bool value) => value ? "yes" : "no";

    private static string Present(ProgramAdvice advice) => advice.Present + (advice is { MinutesOnly: true, Present.IsOff: false } ? OfMinutes : "");

    private static string Percent(double? percent, bool minutesOnly) =>
        percent is { } p ? string.Create(CultureInfo.InvariantCulture, $" {p:0.##} %") + (minutesOnly && p > 0 ? OfMinutes : "") : "";
}
