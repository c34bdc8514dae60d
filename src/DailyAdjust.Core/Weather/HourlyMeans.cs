namespace DailyAdjust.Core.Weather;

/// <summary>Readings of any length to whole hours.</summary>
internal static class HourlyMeans
{
    /// <summary>An hour needs this share of its minutes, as a day does of its intervals.</summary>
    public const double LeastShare = 0.9;

    /// <summary>The mean of every hour, weighted by time; NaN where less than 90 % of the hour is known.</summary>
    /// <param name="samples">Ascending, not overlapping.</param>
    /// <param name="hours">Begins of hours, ascending.</param>
    public static double[] Over(IReadOnlyList<Sample> samples, IReadOnlyList<DateTimeOffset> hours)
    {
        var means = new double[hours.Count];
        var first = 0;
        for (var h = 0; h < hours.Count; h++)
        {
            var (begin, end) = (hours[h], hours[h].AddHours(1));
            while (first < samples.Count && samples[first].End <= begin)
            {
                first++;
            }

            means[h] = Mean(samples, first, begin, end);
        }

        return means;
    }

    private static double Mean(IReadOnlyList<Sample> samples, int first, DateTimeOffset begin, DateTimeOffset end)
    {
        var (sum, known) = (0.0, 0L);
        for (var i = first; i < samples.Count && samples[i].Begin < end; i++)
        {
            var from = samples[i].Begin > begin ? samples[i].Begin : begin;
            var to = samples[i].End < end ? samples[i].End : end;
            sum += samples[i].Value * (to - from).Ticks;
            known += (to - from).Ticks;
        }

        return known >= LeastShare * (end - begin).Ticks ? sum / known : double.NaN;
    }
}
