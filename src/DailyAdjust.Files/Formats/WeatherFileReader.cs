using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>Reads a weather file as its source says: a station's CSV by column map, or a public format; compressed or not.</summary>
public static class WeatherFileReader
{
    private const int LinesToRecognise = 20;

    /// <summary>Reads a whole file, as a stream: memory does not grow with it, and nothing in it makes this throw.</summary>
    /// <param name="file">Its name, for the problems.</param>
    /// <param name="stream">Its bytes, from its position on; can seek, is left open.</param>
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
        var format = PublicFormats.Find(source.Format);
        return Unpacked.Read(
            file,
            stream,
            lines => format is null ? HeaderSearch.Find(file, lines, source).Map is not null : format.Recognises(First(lines)),
            text => format is null ? StationCsvReader.Read(file, text, source, clock, take, ReferenceEquals(text, stream) ? known : 0) : Read(file, text, format, source, clock, take),
            problem => Refused(file, problem));
    }

    private static ReadingsReport Read(string file, Stream stream, PublicFormat format, WeatherSource source, SiteClock clock, Action<ReadingDay> take)
    {
        var text = new DecodedText(stream);
        if (text.NotText is { } why)
        {
            return Refused(file, new Problem(file, 1, 1, why, "Nothing was read from it"));
        }

        var rows = new FormatRows(file, clock, take);
        format.Read(new LineReader(text), source, rows);
        return rows.Finish();
    }

    private static ReadingsReport Refused(string file, Problem why) => new() { File = file, FileRefused = true, Problems = [why] };

    private static List<string> First(LineReader lines)
    {
        var first = new List<string>();
        while (first.Count < LinesToRecognise && lines.TryRead(out var line))
        {
            first.Add(line.ToString());
        }

        return first;
    }
}
