namespace DailyAdjust.Core.Weather;

/// <summary>Fills gaps of up to 3 hours between two known values on a straight line (never rain).</summary>
internal static class ShortGaps
{
    public static readonly TimeSpan Longest = TimeSpan.FromHours(3);

    /// <summary>The samples with the fills between them; every gap is filled in pieces of about one step.</summary>
    /// <param name="samples">Known values, ascending, not overlapping.</param>
    /// <param name="step">Length of the station's interval.</param>
    public static IReadOnlyList<Sample> Fill(IReadOnlyList<Sample> samples, TimeSpan step)
    {
        var filled = new List<Sample>(samples.Count + 8);
        foreach (var next in samples)
        {
            if (filled.Count > 0)
            {
                Between(filled, filled[^1], next, step);
            }

            filled.Add(next);
        }

        return filled;
    }

    private static void Between(List<Sample> filled, Sample before, Sample after, TimeSpan step)
    {
        var gap = after.Begin - before.End;
        if (gap > Longest || gap < step / 2)
        {
            return;
        }

        var pieces = (int)Math.Round(gap / step, MidpointRounding.AwayFromZero);
        for (var i = 0; i < pieces; i++)
        {
            var begin = before.End + (gap * i / pieces);
            var end = before.End + (gap * (i + 1) / pieces);
            var middle = begin + ((end - begin) / 2);
            var share = (middle - before.Middle) / (after.Middle - before.Middle);
            filled.Add(new Sample(begin, end, before.Value + (share * (after.Value - before.Value)), Interpolated: true));
        }
    }
}
