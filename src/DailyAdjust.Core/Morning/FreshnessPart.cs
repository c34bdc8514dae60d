using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>Part 1 of the sheet: how far its knowledge reaches.</summary>
internal static class FreshnessPart
{
    /// <summary>Days whose assumptions and doubts are told.</summary>
    private const int ToldDays = 7;

    /// <summary>Days whose weather is shown.</summary>
    private const int ShownDays = 14;

    public static Freshness Of(MorningInputs inputs, AdviceContext context, IReadOnlyList<ProgramAdvice> programs, Trouble? trouble, IReadOnlyList<UnknownRain> unknownRain)
    {
        var recent = inputs.Weather.TakeLast(ToldDays).ToList();
        return new Freshness
        {
            WeatherThrough = inputs.NewestReadingEnd,
            Station = inputs.NewestReadingStation,
            NoAdvice = trouble?.Why,
            NoAdviceSince = trouble?.Since,
            AssumedNotes = [.. recent.SelectMany(day => Notes(day, context.Site.Units)), .. ForecastPart.SetAside(inputs.ForecastSetAside) is { } aside ? [new(null, aside)] : Array.Empty<AssumedNote>()],
            SetAside = SensorPart.SetAside([.. recent.SelectMany(day => day.SetAside.Select(v => (day.Date, v))), .. inputs.RainSetAsideSinceMidnight.Select(v => (inputs.Date, v))], context.Site.Units),
            Doubts = [.. SensorPart.Doubts(recent, context.Site.Units), .. GaugeDoubts.Of(context, inputs.Weather)],
            UnknownRain = unknownRain,
            UnansweredRounds = [.. programs.Where(p => p.Unanswered is not null).Select(p => p.Unanswered!.Round).Distinct().OrderBy(r => r.Date).ThenBy(r => r.Issue)],
            NeverConfirmed = [.. programs.Where(p => !p.Confirmed).Select(p => p.Key)],
            RecentDays = [.. inputs.Weather.TakeLast(ShownDays)],
            ExpectedEtoMm = trouble is null ? context.ExpectedEtoMm(inputs.Date) : null,
        };
    }

    private static IEnumerable<AssumedNote> Notes(WeatherDay day, UnitSystem units)
    {
        var place = SensorPart.Place(day.StandIn, units);
        Phrase how = day.Basis switch
        {
            EtoBasis.Expected => new Phrase("no station reported a whole day"),
            EtoBasis.OtherStation => $"taken from station {day.Station}{place}",
            EtoBasis.TemperatureOnly => $"only temperatures were measured (station {day.Station}){place}",
            EtoBasis.PartEstimated => $"part of it estimated (station {day.Station}){place}",
            EtoBasis.Open => new Phrase("not known"),
            _ => Phrase.Empty,
        };
        var details = Phrase.Join("; ", day.Estimated.Select(words => RecordedWords.OfQuantity(RecordedUnits.Sentence(units, words))));
        if (!how.IsEmpty || !details.IsEmpty)
        {
            yield return new(day.Date, Phrase.Join(": ", new[] { how, details }.Where(p => !p.IsEmpty)));
        }

        foreach (var rain in day.Rain.Where(r => r.MissingH > 0))
        {
            yield return new(day.Date, $"{rain.MissingH:0.#} h of gauge {rain.Gauge} are missing; the rest of the day counts as the whole");
        }

        foreach (var rain in day.Rain.Where(r => r.Basis == RainBasis.Substitute))
        {
            yield return new(day.Date, $"nothing is known of gauge {rain.Gauge}; the rain of gauge {rain.Substitute} stands in");
        }
    }
}
