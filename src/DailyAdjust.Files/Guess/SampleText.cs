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

    /// <summary>Compressed files are looked into.</summary>
    public static SampleText Read(Stream stream) => Unpacked.Read(
        "",
        stream,
        lines => lines.TryRead(out _) && lines.Fault == LineFault.None,
        ReadText,
        problem => new([], "", problem.What));

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
