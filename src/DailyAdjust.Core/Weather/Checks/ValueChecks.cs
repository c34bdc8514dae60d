namespace DailyAdjust.Core.Weather.Checks;

/// <summary>The checks that look at one reading by itself.</summary>
internal static class ValueChecks
{
    /// <summary>The reading without the values that its sensors cannot have measured; those are noted.</summary>
    public static Reading Keep(Reading reading, CheckNotes notes) =>
        NightSunCheck.Keep(DewPointCheck.Keep(OrderCheck.Keep(HumidityCheck.Keep(LimitsCheck.Keep(reading, notes), notes), notes), notes), notes);
}
