using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Json;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Index;

/// <summary>What one site asks for today.</summary>
public sealed class SiteToday
{
    /// <param name="record">What is known of it.</param>
    /// <param name="name">What the page calls it.</param>
    /// <param name="today">The newest morning of all sites; null = none has had one.</param>
    public SiteToday(IndexSite record, string name, DateOnly? today)
    {
        Record = record;
        Name = name;
        if (record.Newest is not { } newest || newest.Date != today)
        {
            Warnings = IndexWords.NoSheet(record, today);
            return;
        }

        if (IssuedAdvice.TryRead(newest.AdviceJson().Span, newest.Site, out var trouble) is not { } advice)
        {
            // One site's bad record is no reason to keep the others from their round.
            Record = record with { Trouble = trouble };
            Warnings = IndexWords.NoSheet(Record, today);
            return;
        }

        Words = new SiteWords(newest.Site.Units, newest.Site.Clock, newest.Date);
        Boxes = RoundBox.Of(advice.Programs, newest.Site);
        Counts = RoundCounts.Of(advice.Programs);
        By = RoundWords.By(newest.Site, advice.IsAfterRound);
        Acts = BoxActWords.Of(new BoxActs(advice.Programs, advice.Exceptions, Words, advice.AsOf));
        ToVerify = [.. advice.BoxesToVerify.Select(b => CommonWords.Box(b.Controller, newest.Site))];
        Warnings = WarningWords.Of(advice, newest.Site, Words);
        Urgency = advice.Freshness.NoAdvice is not null ? Urgency.NoAdvice
            : advice.StationsByHand > 0 || advice.HandRuns.Count > 0 ? Urgency.RunByHand
            : advice.BoxesToVerify.Count > 0 ? Urgency.VerifyBoxes
            : Counts.SwitchOff + Counts.TurnOn > 0 ? Urgency.OffOrOn
            : Boxes.Count + advice.StartBoxes.Count > 0 ? Urgency.Changes
            : Warnings.Count > 0 ? Urgency.Questions
            : Urgency.Nothing;
    }

    public IndexSite Record { get; }

    public string Name { get; }

    public Urgency Urgency { get; } = Urgency.NoSheet;

    /// <summary>By when the round is walked; empty where there is no sheet of today.</summary>
    public Phrase By { get; } = Phrase.Empty;

    /// <summary>Null = there is no sheet of today.</summary>
    public SiteWords? Words { get; }

    /// <summary>To open today; a sheet of another day has none, for its numbers were that day's.</summary>
    public IReadOnlyList<RoundBox> Boxes { get; } = [];

    /// <summary>Boxes that lost power, with their places.</summary>
    public IReadOnlyList<string> ToVerify { get; } = [];

    /// <summary>What is to be done at boxes beside their dials: starts and stations to take out, put back or key in.</summary>
    internal IReadOnlyList<ExceptionGroup> Acts { get; } = [];

    public RoundCounts Counts { get; } = RoundCounts.Of(Array.Empty<IssuedLine>());

    /// <summary>What stands at the top of its sheet, or why there is none.</summary>
    public IReadOnlyList<Warning> Warnings { get; }
}
