namespace DailyAdjust.Reports.Words;

/// <summary>Notes in round.csv.</summary>
internal static class RoundCsvWords
{
    public const string Confirm = "Nobody has confirmed this one: write what the dial shows under found.";
}
