using System.Globalization;
using System.Text;
using DailyAdjust.Files.Sites;

namespace DailyAdjust.Service.Printing;

/// <summary>What was, or would be, written into stations.csv.</summary>
internal static class ChangesText
{
    public static string Of(IReadOnlyList<CellChange> changes, string file, bool dryRun)
    {
        if (changes.Count == 0)
        {
            return $"Nothing to store: {file} stays as it is.\n";
        }

        var text = new StringBuilder($"{(dryRun ? "Would be stored" : "Stored")} in {file}:\n");
        foreach (var row in changes.GroupBy(c => c.Line))
        {
            var cells = row.Select(c => $"{c.Column} {(c.Old.Length > 0 ? c.Old : "(empty)")} -> {c.New}");
            text.Append(CultureInfo.InvariantCulture, $"  line {row.Key}, {row.First().Station}: {string.Join("; ", cells)}\n");
        }

        return text.Append(dryRun
            ? "Nothing was changed. Without --dry-run it is.\n"
            : "It holds from the day after the next morning reads it; `dailyadjust morning --from DATE` lets it hold from that date. If it was so all along, write correct: true under site: in site.yaml.\n").ToString();
    }
}
