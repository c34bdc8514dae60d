using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Reports.Words;

/// <summary>What late and corrected weather changes about the sheet before this one.</summary>
internal static class CorrectionWords
{
    private const int Most = 6;

    public static readonly Phrase Title = new("Corrected since the last sheet");

    /// <summary>One sentence per value, and one for what the last sheet would say now.</summary>
    public static IReadOnlyList<Phrase> Of(Corrections corrections, SheetView view)
    {
        var lines = corrections.Weather.Take(Most).Select(value => Value(value, view.Words)).ToList();
        if (corrections.Weather.Count > Most)
        {
            lines.Add($"And {SiteWords.Count(corrections.Weather.Count - Most)} values more.");
        }

        lines.Add(corrections.Advice.Count == 0
            ? Phrase.Of($"The sheet of {SiteWords.Date(corrections.Sheet)} would say the same with this.")
            : $"With what is known now, the sheet of {SiteWords.Date(corrections.Sheet)} would have said: {Advice(corrections.Advice, view)}. It stays as it was issued; today's numbers have it in.");
        return lines;
    }

    private static Phrase Value(WeatherCorrection value, SiteWords words) =>
        $"{(value.Gauge.Length == 0 ? new Phrase("Reference ET") : $"Rain at {value.Gauge}")} of {SiteWords.Date(value.Date)}: was {words.DepthOf(value.WasMm)}, is {words.DepthOf(value.IsMm)}.";

    private static Phrase Advice(IReadOnlyList<AdviceCorrection> lines, SheetView view)
    {
        var named = lines.Take(Most).Select(line => Phrase.Of($"{view.Label(line.Program)} {Said(line.Would, line.WouldPercent)} (it said {Said(line.Was, line.WasPercent)})")).ToList();
        return Phrase.List(lines.Count > Most ? [.. named, $"{SiteWords.Count(lines.Count - Most)} lines more"] : named);
    }

    private static Phrase Said(AdviceKind advice, double? percent) =>
        $"{AdviceWords.Act(advice).Shaped(word => word.ToLowerInvariant())}{(percent is { } number && advice is AdviceKind.Set or AdviceKind.Resume or AdviceKind.Leave ? " " + Plain.Short(percent!.Value) + " %" : "")}";
}
