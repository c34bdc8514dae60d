using System.Globalization;

namespace DailyAdjust.Service.Setup;

/// <summary>Proposes a time zone for a place: the one whose principal town is nearest, by the system's own list.</summary>
public static class TimeZoneGuess
{
    private const string List = "/usr/share/zoneinfo/zone.tab";

    /// <summary>The proposal is confirmed by a person: the nearest town may lie across the border of a zone.</summary>
    public static string? For(double latitudeDeg, double longitudeDeg)
    {
        var nearest = File.Exists(List)
            ? File.ReadLines(List)
                .Where(line => !line.StartsWith('#'))
                .Select(line => line.Split('\t'))
                .Where(cells => cells.Length >= 3)
                .Select(cells => (Zone: cells[2], Place: Coordinates(cells[1])))
                .MinBy(entry => Distance(entry.Place, latitudeDeg, longitudeDeg))
                .Zone
            : null;
        return nearest ?? LocalIfNear(longitudeDeg);
    }

    /// <summary>This machine's zone, if its standard time suits the longitude.</summary>
    private static string? LocalIfNear(double longitudeDeg)
    {
        var local = TimeZoneInfo.Local;
        return Math.Abs(local.BaseUtcOffset.TotalHours - (longitudeDeg / 15)) > 2 ? null
            : local.HasIanaId ? local.Id
            : TimeZoneInfo.TryConvertWindowsIdToIanaId(local.Id, out var iana) ? iana
            : null;
    }

    /// <summary>Cosine of the angle between the two places, turned around so that the nearest is the least.</summary>
    private static double Distance((double Latitude, double Longitude) a, double latitudeDeg, double longitudeDeg)
    {
        var (p, q) = (double.DegreesToRadians(a.Latitude), double.DegreesToRadians(latitudeDeg));
        return -((Math.Sin(p) * Math.Sin(q)) + (Math.Cos(p) * Math.Cos(q) * Math.Cos(double.DegreesToRadians(a.Longitude - longitudeDeg))));
    }

    /// <summary>ISO 6709: ±DDMM±DDDMM or ±DDMMSS±DDDMMSS.</summary>
    private static (double, double) Coordinates(string text)
    {
        var split = text.LastIndexOfAny(['+', '-']);
        return (Degrees(text[..split], 2), Degrees(text[split..], 3));
    }

    private static double Degrees(string text, int digits)
    {
        var value = Part(text, 1, digits) + (Part(text, 1 + digits, 2) / 60) + (Part(text, 3 + digits, 2) / 3600);
        return text[0] == '-' ? -value : value;
    }

    private static double Part(string text, int from, int length) => text.Length >= from + length
        ? double.Parse(text.AsSpan(from, length), NumberStyles.None, CultureInfo.InvariantCulture)
        : 0;
}
