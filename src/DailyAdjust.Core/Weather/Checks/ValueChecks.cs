namespace DailyAdjust.Core.Weather.Checks;

/// <summary>The checks that look at one reading by itself.</summary>
internal static class ValueChecks
{
    /// <summary>The reading without the values that its sensors cannot have measured; those are noted.</summary>
    public static Reading Keep(Reading reading, CheckNotes notes)
    {
        var kept = LimitsCheck.Keep(reading, notes);
        kept = HumidityCheck.Keep(kept, notes);
        kept = OrderCheck.Keep(kept, notes);
        kept = DewPointCheck.Keep(kept, notes);
        kept = NightSunCheck.Keep(kept, notes);
        return ClearSkyCheck.Keep(kept, notes);
    }
}
