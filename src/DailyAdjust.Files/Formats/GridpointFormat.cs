namespace DailyAdjust.Files.Formats;

/// <summary>The public US gridpoint forecast (JSON).</summary>
internal static class GridpointFormat
{
    public const string Name = "gridpoint";
}
