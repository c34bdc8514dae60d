using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Rounds;

/// <summary>The number of a row that came back, held against the sheet as it was issued: who answers `yes` answers what was printed.</summary>
internal static class IssuedNumber
{
    /// <summary>Half of the last decimal that is written.</summary>
    private const double Same = 0.00005;

    /// <param name="said">What the sheet said of the program; of a date without its issue each of them.</param>
    /// <param name="sheet">The sheet's id as it stands in the row.</param>
    /// <param name="written">`new` as it stands in the row.</param>
    /// <returns>Null = it is what the sheet said, or the sheet does not tell.</returns>
    public static SheetFault? Of(IReadOnlyList<IssuedLine> said, string sheet, Setting written)
    {
        List<double> numbers = [.. said.Select(l => l.NumberAfter).OfType<double>()];
        return numbers.Count < said.Count || numbers.Count == 0 || numbers.Exists(n => Math.Abs(n - written.Percent) <= Same) ? null : new(
            $"sheet {sheet} said {string.Join(" or ", numbers.Distinct().Select(InWords))} and {RoundColumns.New} is {InWords(written.Percent)} here",
            $"put back what the sheet was sent with; a number that was set otherwise belongs into {RoundColumns.Done}, one that the dial showed into {RoundColumns.Found}");
    }

    private static string InWords(double percent) => percent == 0 ? "off" : $"{Wording.Number(percent)} %";
}
