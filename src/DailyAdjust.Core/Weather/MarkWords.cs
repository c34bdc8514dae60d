using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Weather;

/// <summary>What sources said about their values, in words.</summary>
internal static class MarkWords
{
    /// <summary>The name under which values that their source itself did not stand by are set aside.</summary>
    public const string AtSource = "at_source";

    /// <summary>"rain: trace counts as 0", of the day's readings of some stations; each once, ordinal order.</summary>
    public static IReadOnlyList<string> Of(IEnumerable<StationWindow> used) =>
        [.. used.SelectMany(w => w.OfDay).SelectMany(r => r.Marks).Select(m => $"{QuantityName.Of(m.Quantity)}: {Said(m)}").Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>Notes the values that a reading does not have because its source did not stand by them.</summary>
    public static void Note(Reading reading, CheckNotes notes)
    {
        foreach (var mark in reading.Marks)
        {
            if (mark.Kind is MarkKind.SeveralDays or MarkKind.FailedAtSource or MarkKind.IncompleteAtSource)
            {
                notes.Note(AtSource, reading, $"{QuantityName.Of(mark.Quantity)} {mark.Raw}".TrimEnd(), Said(mark), 1);
            }
        }
    }

    private static string Said(ValueMark mark) => mark.Kind switch
    {
        MarkKind.Trace => "trace counts as 0",
        MarkKind.SeveralDays => "a total of several days, not used",
        MarkKind.FailedAtSource => "failed a check of its source, not used",
        MarkKind.EstimatedAtSource => "estimated by its source",
        MarkKind.IncompleteAtSource => "incomplete at its source, not used",
        MarkKind.OtherWindow => mark.Raw.Length > 0 ? "observed over " + mark.Raw : "observed over another day than the site's",
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark.Kind, "Not a mark."),
    };
}
