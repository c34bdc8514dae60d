namespace DailyAdjust.Files;

/// <summary>Column headers that carry their unit in brackets: "Temp (°F)", "wind [mph]".</summary>
public static class HeaderUnit
{
    /// <summary>The name without its closing bracket, and what stands in that bracket; null where there is none.</summary>
    public static (string Name, string? Unit) Split(string header)
    {
        var text = header.Trim();
        var open = text switch
        {
            [.., ')'] => text.LastIndexOf('('),
            [.., ']'] => text.LastIndexOf('['),
            _ => -1,
        };
        return open < 0 ? (text, null) : (text[..open].TrimEnd(), text[(open + 1)..^1].Trim());
    }
}
