using System.Globalization;

namespace DailyAdjust.Fuzz.Inputs;

/// <summary>Numbers and dates at the ends of what there is.</summary>
internal static class Numbers
{
    private static readonly string[] Extremes =
    [
        "0", "-0", "0.0", "-1", "1e308", "-1e308", "1.7976931348623157e308", "1e309", "5e-324", "1e-400", "NaN", "Infinity", "-Infinity", "\u221E", "2147483647", "2147483648", "-2147483648",
        "9223372036854775807", "9223372036854775808", "99999999999999999999999", "0.1e", "1e", "+1", "--1", "1.2.3", "1,5", "1 000", "0x10", "1_000", "\u0663", "-9999", "9999.9", "-99.9", ".5", "5.", ".",
        "1000", "1000.0001", "100.0000000001", "0.30000000000000004", "123456789012345.6", "1234567890123456", "00000000000000000000001", "1e+1", "1E1", "1e-1", "4.9E-324 in", "1e308 in", "1e308 %",
        "0001-01-01", "9999-12-31", "1900-01-01", "2199-12-31", "2200-01-01", "2026-02-29", "2024-02-29", "2026-13-01", "2026-00-10", "2026-03-08 02:30", "2026-11-01 01:30", "2026-06-31", "24:00", "23:59", "00:00",
        "25:00", "2026-12-31 24:00", "1969-12-31", "315532800", "7258118400", "1780000000", "1780000000000",
    ];

    public static string Extreme(Random random) => random.Next(5) switch
    {
        0 => new string((char)('0' + random.Next(10)), random.Next(1, 400)),
        1 => (random.NextDouble() * Math.Pow(10, random.Next(-20, 20))).ToString("R", CultureInfo.InvariantCulture),
        2 => random.Next(-1000, 3000).ToString(CultureInfo.InvariantCulture),
        _ => System.Text.Encoding.Latin1.GetString(System.Text.Encoding.UTF8.GetBytes(Extremes[random.Next(Extremes.Length)])),
    };
}
