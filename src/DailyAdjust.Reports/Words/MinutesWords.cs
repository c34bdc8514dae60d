using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>A box without a percentage: people key in minutes station by station, and every number is percent of those in stations.csv.</summary>
internal static class MinutesWords
{
    public static readonly Phrase Act = new("NEW MINUTES");
    public static readonly Phrase On = new("on");
    public static readonly Phrase OfBase = new(" of stations.csv");
    public static readonly Phrase NotConfirmed = new("Nobody has confirmed its minutes; those of stations.csv are taken until somebody reads them at the box.");
    public static readonly Phrase Taken = new("Taken to run its minutes of stations.csv until somebody reads them at the box.");
    public static readonly Phrase Read = new("Read the minutes at the box and reckon their percent of those in stations.csv (20 of 25 min is 80 %)");

    /// <summary>The act inside a sentence.</summary>
    public static readonly Phrase Set = new("new minutes,");

    private const int MostStations = 6;

    /// <summary>" (station 1: 20 → 60 min; station 2: 25 → 75 min)"; empty where there are none.</summary>
    public static Phrase Stations(IReadOnlyList<StationMinutes> minutes) => minutes.Count == 0 ? Phrase.Empty
        : $" ({Phrase.Join("; ", minutes.Take(MostStations).Select(AdviceWords.NewMinutes))}{(minutes.Count > MostStations ? $"; and {SiteWords.Count(minutes.Count - MostStations)} more" : Phrase.Empty)})";

    /// <summary>What it runs for, behind "leave" and "as set".</summary>
    public static Phrase Its(double percent) => $"its minutes ({SiteWords.Percent(percent)}{OfBase})";
}
