using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Readings;

/// <summary>What a file writes where it has no value: nothing, or one of these texts. A mark that is a number counts however it is written (-999, -999.0).</summary>
internal sealed class MissingMarks(IReadOnlyList<string> marks)
{
    private readonly string[] _texts = [.. marks.Select(mark => mark.Trim()).Where(mark => mark.Length > 0)];
    private readonly double[] _numbers = [.. marks.Select(mark => NumberText.TryParse(mark, out var number) ? number : double.NaN).Where(number => !double.IsNaN(number))];

    public bool Contains(ReadOnlySpan<char> cell)
    {
        if (cell.IsEmpty)
        {
            return true;
        }

        foreach (var text in _texts)
        {
            if (cell.Equals(text, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    public bool Contains(double number) => Array.IndexOf(_numbers, number) >= 0;
}
