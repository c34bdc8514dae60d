using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;

namespace DailyAdjust.Files.Guess;

/// <summary>Recognises the formats that publishers describe.</summary>
internal static class PublicGuess
{
    private const int LinesShown = 200;

    /// <summary>Null = none of them.</summary>
    public static WeatherGuess? Of(string file, SampleText text)
    {
        IReadOnlyList<string> first = [.. text.Lines.Take(LinesShown)];
        if (PublicFormats.All.FirstOrDefault(format => format.Recognises(first)) is not { } format)
        {
            return null;
        }

        return new()
        {
            File = file,
            What = format.Title,
            Source = new()
            {
                Id = FileNames.Id(file),
                Files = FileNames.Pattern(file),
                Format = format.Name,
                Time = new("", null, "", StampClock.Local, StampMeaning.End),
                Interval = format.Interval,
                Columns = format.Quantities.ToDictionary(quantity => quantity, quantity => new MappedColumn(QuantityName.Of(quantity), null)),
                WindHeightM = format.WindHeightM,
            },
            Findings = [new("format", format.Name, IsSure: true, $"{format.Title}: its publisher fixes columns, units, clock and marks")],
        };
    }
}
