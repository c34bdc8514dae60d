using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>Reads one file of a public format; every row that it meets is told to the collector, which counts it.</summary>
internal delegate void ReadFormat(LineReader lines, WeatherSource source, FormatRows rows);

/// <summary>A weather format that its publisher describes: its columns, units, clock and marks are known and are not asked for.</summary>
/// <param name="Name">As site.yaml writes it.</param>
/// <param name="Title">What people call it, with its publisher.</param>
/// <param name="Interval">One hour or one day.</param>
/// <param name="WindHeightM">Where its stations measure wind, unless the site says otherwise, m.</param>
/// <param name="Quantities">What it can carry.</param>
/// <param name="Recognises">Whether the first lines of a file (decoded) are of this format.</param>
/// <param name="Read">Reads a file of it.</param>
internal sealed record PublicFormat(
    string Name,
    string Title,
    TimeSpan Interval,
    double WindHeightM,
    IReadOnlyList<WeatherQuantity> Quantities,
    Func<IReadOnlyList<string>, bool> Recognises,
    ReadFormat Read);
