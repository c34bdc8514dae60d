using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>Reads a weather file as its source says: a station's CSV by column map, or a public format.</summary>
public static class WeatherFileReader
{
    /// <summary>Reads a whole file, as a stream: memory does not grow with it, and nothing in it makes this throw.</summary>
    /// <param name="file">Its name, for the problems.</param>
    /// <param name="stream">Its bytes from the first on; is left open.</param>
    /// <param name="source">Format and column map.</param>
    /// <param name="clock">The site's clock.</param>
    /// <param name="take">
    /// Takes the readings day by day, ascending as long as the file is. Where rows are far out of order, a day comes again with its later rows.
    /// What it was given before a file turned out to be refused does not count.
    /// </param>
    /// <param name="known">How many bytes of its beginning were read before; see <see cref="StationCsvReader"/>. Public formats are read whole.</param>
    /// <exception cref="IOException">The bytes could not be read.</exception>
    public static ReadingsReport Read(string file, Stream stream, WeatherSource source, SiteClock clock, Action<ReadingDay> take, long known = 0)
    {
        if (PublicFormats.Find(source.Format) is not { } format)
        {
            return StationCsvReader.Read(file, stream, source, clock, take, known);
        }

        var text = new DecodedText(stream);
        if (text.NotText is { } why)
        {
            return new() { File = file, FileRefused = true, Problems = [new Problem(file, 1, 1, why, "Nothing was read from it")] };
        }

        var rows = new FormatRows(file, clock, take);
        format.Read(new LineReader(text), source, rows);
        return rows.Finish();
    }
}
