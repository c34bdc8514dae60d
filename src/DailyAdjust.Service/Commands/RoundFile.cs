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

        if (words.Words.Count > 1 || words.Except.Count > 0 || words.Time is not null || words.Until.Length + words.By.Length + words.Note.Length > 0)
        {
            throw new WrongInputException($"round {path}: what was done, and what not, stands in the file.", $"Write no more than: log round {path}");
        }

        return RoundSheetReader.Recognises(Head(path)) ? path : throw new WrongInputException($"{path} is no round sheet.", "`dailyadjust ingest` takes weather and logbooks.");
    }

    private static string Head(string path)
    {
        using var stream = File.OpenRead(path);
        var head = new byte[HeadLength];
        return DescriptionFiles.Decode(head.AsSpan(0, stream.ReadAtLeast(head, HeadLength, throwOnEndOfStream: false)).ToArray());
    }
}
