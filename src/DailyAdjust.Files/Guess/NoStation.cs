using DailyAdjust.Files.Formats;

namespace DailyAdjust.Files.Guess;

/// <summary>A file that is recognised, and is no source of measured weather.</summary>
/// <param name="What">"a typical year".</param>
/// <param name="Seen">By what it was recognised.</param>
/// <param name="ToDo">What to do with it.</param>
internal sealed record NoStation(string What, string Seen, string ToDo)
{
    private const string EpwBegins = "LOCATION,";

    /// <summary>Null = it may be one.</summary>
    public static NoStation? Of(SampleText text)
    {
        var first = text.Lines.FirstOrDefault(line => !string.IsNullOrWhiteSpace(line))?.TrimStart('\uFEFF', ' ', '\t') ?? "";
        if (first.StartsWith(EpwBegins, StringComparison.OrdinalIgnoreCase))
        {
            return new("a typical year (EPW)", "its first line is that of an EPW file: hours of a typical year, nobody's record", "`dailyadjust weather normals FILE` takes monthly normals from it");
        }

        return first is ['{' or '[', ..] && !GridpointFormat.Format.Recognises(text.Lines)
            ? new("JSON", "JSON, but not the public gridpoint forecast: neither forecastOffice, gridId nor validTimes stands in it", "fetch the whole answer of the gridpoint forecast, or save the data as a table (CSV)")
            : null;
    }
}
