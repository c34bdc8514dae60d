using System.Text;
using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>Door cards for a terminal.</summary>
internal static class DoorCardText
{
    public static string Write(Site site, IReadOnlyList<DoorCard> cards)
    {
        var text = new StringBuilder();
        foreach (var card in cards)
        {
            var chart = card.Chart;
            text.Append(TableText.OneLine($"{DoorCardWords.Title(site, card)}, {chart.Controller.Place}".TrimEnd(' ', ','))).Append('\n');
            text.Append(DoorCardWords.Revision(card)).Append("\n\n");
            text.Append(Programs(chart).ToText()).Append('\n');
            text.Append(Stations(chart).ToText()).Append('\n');
            Ticks(text, DoorCardWords.KeyIn, DoorCardWords.Steps(chart));
            Ticks(text, DoorCardWords.Checking, DoorCardWords.Checks(chart));
        }

        return text.Append(string.Join('\n', DoorCardWords.Cautions)).Append('\n').ToString();
    }

    private static Table Programs(DoorChart chart) => new(
        ["program", "starts", "days", "ends at 100 %"],
        [.. chart.Programs.Select(IReadOnlyList<Cell> (p) => [Cell.Text(DoorCardWords.Name(p.Id, p.Name)), Cell.Text(DoorCardWords.Starts(p)), Cell.Text(DoorCardWords.DaysOf(p.Days)), Cell.Text(DoorCardWords.Finishes(p))])]);

    private static Table Stations(DoorChart chart) => new(
        ["station", "name", "area", .. chart.Programs.Select(p => "min " + p.Id)],
        [.. chart.Stations.Select(IReadOnlyList<Cell> (s) => [Cell.Text(s.Id), Cell.Text(s.Name), Cell.Text(s.Area), .. s.Minutes.Select(Cell.Short)])]);

    private static void Ticks(StringBuilder text, string title, IEnumerable<string> lines)
    {
        text.Append(title).Append('\n');
        foreach (var line in lines)
        {
            text.Append("  [ ] ").Append(TableText.OneLine(line)).Append('\n');
        }

        text.Append('\n');
    }
}
