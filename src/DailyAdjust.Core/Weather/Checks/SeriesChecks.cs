namespace DailyAdjust.Core.Weather.Checks;

/// <summary>The checks that hold a reading against those around it; of stations that report intervals of an hour or less.</summary>
internal static class SeriesChecks
{
    public static void Run(CheckedRows rows)
    {
        LimitsCheck.KeepRainOfDay(rows);
        ClearSkyCheck.Run(rows);
        SpikeCheck.Run(rows);
        StuckCheck.Run(rows);
        StillWindCheck.Run(rows);
        RainSpikeCheck.Run(rows);
    }
}
