using DailyAdjust.Files.Rounds;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`log round FILE`: a filled-in round.csv that is named where the sheet's date stands otherwise.</summary>
internal static class RoundFile
{
    private const int HeadLength = 4096;

    /// <returns>Its path; null = the words name a sheet.</returns>
    /// <exception cref="WrongInputException">It is no round sheet, or something is said beside it that the file says.</exception>
    public static string? Of(LogWords words)
    {
        if (words.Kind is not "round" || words.Words is not [var path, ..] || !File.Exists(path) || GlobalOptions.ReadDate(path) is not null)
        {
            return null;
        }

        if (NotBesideIt(words) is { } why)
        {
            throw new WrongInputException($"round {path}: {why}", $"Write no more than: log round {path}; beside it --date and --time say when it was done, --by who says so.");
        }

        return RoundSheetReader.Recognises(Head(path)) ? path : throw new WrongInputException($"{path} is no round sheet.", "`dailyadjust ingest` takes weather and logbooks.");
    }

    /// <summary>Why what stands beside the file cannot; null = it can.</summary>
    private static string? NotBesideIt(LogWords words) =>
        words.Words.Count > 1 || words.Except.Count > 0 ? "what was done, and what not, stands in the file."
        : words.Until.Length > 0 ? "--until cannot go with a file: what was set has no end, and a pause has its days in the file."
        : words.Note.Length > 0 ? "--note cannot go with a file: each row has a cell for its own."
        : words.Instrument.Length + words.Rod.Length > 0 ? "--instrument and --rod are of a moisture meter."
        : null;

    private static string Head(string path)
    {
        using var stream = File.OpenRead(path);
        var head = new byte[HeadLength];
        return DescriptionFiles.Decode(head.AsSpan(0, stream.ReadAtLeast(head, HeadLength, throwOnEndOfStream: false)).ToArray());
    }
}
