using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>The first lines of a file, decoded, and its last one.</summary>
/// <param name="Lines">At most as many as are looked at; a line that cannot be split into cells is empty.</param>
/// <param name="LastLine">The last line that is not blank.</param>
/// <param name="Unreadable">Why the file is no text; null where it is.</param>
internal sealed record SampleText(IReadOnlyList<string> Lines, string LastLine, string? Unreadable)
{
    /// <summary>Four weeks of 5-minute rows, a week of 1-minute rows: several clear days.</summary>
    private const int MostLines = 10_000;

    /// <summary>Enough to tell what kind of file it is.</summary>
    private const int LinesOfKind = 50;
    private const int FewestRows = 4;
    private const string Delimiters = ",;\t|";

    /// <summary>Compressed files are looked into.</summary>
    public static SampleText Read(Stream stream)
    {
        // Of an archive with several files: the one of a public format, else the one that is a table.
        var start = stream.Position;
        var text = Read(stream, first => PublicFormats.All.Any(format => format.Recognises(first)));
        if (text.Unreadable is null)
        {
            return text;
        }

        stream.Position = start;
        return Read(stream, IsTable);
    }

    private static SampleText Read(Stream stream, Func<IReadOnlyList<string>, bool> fits) => Unpacked.Read(
        "",
        stream,
        lines => fits(First(lines)),
        ReadText,
        problem => new([], "", problem.What));

    private static List<string> First(LineReader lines)
    {
        var first = new List<string>();
        while (first.Count < LinesOfKind && lines.TryRead(out var line) && lines.Fault == LineFault.None)
        {
            first.Add(line.ToString());
        }

        return first;
    }

    /// <summary>Several lines with as many cells each, and numbers in them.</summary>
    private static bool IsTable(IReadOnlyList<string> first) => Delimiters.Any(delimiter => first
        .Where(line => line.Any(char.IsAsciiDigit))
        .GroupBy(line => line.Count(c => c == delimiter))
        .Any(lines => lines.Key > 0 && lines.Count() >= FewestRows));

    private static SampleText ReadText(Stream stream)
    {
        var text = new DecodedText(stream);
        if (text.NotText is { } why)
        {
            return new([], "", why);
        }

        var reader = new LineReader(text);
        var (lines, last, noText) = (new List<string>(), "", 0);
        while (reader.TryRead(out var line))
        {
            noText += reader.Fault == LineFault.NotText ? 1 : 0;
            if (lines.Count < MostLines)
            {
                lines.Add(line.ToString());
            }

            last = line.IsWhiteSpace() ? last : line.ToString();
        }

        return noText > lines.Count / 2 ? new([], "", "the file holds bytes that are no text") : new(lines, last, null);
    }
}
