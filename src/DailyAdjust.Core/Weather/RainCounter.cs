using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Weather;

/// <summary>What a running total says of a station's rain.</summary>
/// <param name="Readings">With their rain.</param>
/// <param name="SetAside">Totals that could not be used.</param>
/// <param name="NotKnown">Times of which the total tells that rain may have fallen, and not how much.</param>
internal sealed record CountedRain(
    IReadOnlyList<Reading> Readings, IReadOnlyList<SetAsideValue> SetAside, IReadOnlyList<(DateTimeOffset Begin, DateTimeOffset End)> NotKnown);

/// <summary>
/// Rain of a station that reports a running total: what the total grew by from one good reading to the next. A total that fell, and stays
/// below what it was, began at 0 again; one that comes back was wrong for a while, and what fell meanwhile is in the next good one.
/// </summary>
/// <remarks>
/// The first total of all has nothing to be held against, so its interval's rain is missing. Rain that fell while nothing was reported, within one date, is
/// taken as fallen when the total was next reported. A silence over midnight over which the total did not grow is dry; one over which it grew
/// is not known in both days, for no one knows which of them has it. So is a silence of more than a day.
/// </remarks>
internal sealed class RainCounter
{
    /// <summary>A day looks back at 30 hours; what a total says must not depend on anything before that.</summary>
    private static readonly TimeSpan LongestSilence = TimeSpan.FromHours(24);

    /// <summary>What a total may differ by and still be the same: the last digit of a converted number, mm.</summary>
    private const double SameMm = 1e-6;

    /// <summary>A total that fell and of which nothing later tells more began again only below this share of what it was. Common practice.</summary>
    private const double MostAfterReset = 0.5;

    /// <summary>A counter whose total began a date at no more than this may begin again at every midnight, mm. Common practice.</summary>
    private const double BeginsMm = 1;

    /// <summary>More rain than this in one step is believed only when the next total confirms it, mm. Common practice.</summary>
    private const double CloudburstMm = 50;

    /// <summary>A storm goes on over midnight with at most so many times what fell in its last interval. Common practice.</summary>
    private const double MostOfStorm = 2;

    private readonly string _station;
    private readonly SiteClock _clock;
    private readonly bool _accepted;
    private readonly List<Reading> _rain = [];
    private readonly List<SetAsideValue> _setAside = [];
    private readonly List<(DateTimeOffset Begin, DateTimeOffset End)> _notKnown = [];
    private readonly List<Reading> _silent = [];
    private Reading? _good;
    private double _grewMm;
    private (DateOnly Date, double TotalMm)? _firstOfDate;

    private RainCounter(string station, SiteClock clock, bool accepted)
    {
        _station = station;
        _clock = clock;
        _accepted = accepted;
    }

    /// <summary>The readings with their rain, and what could not be used.</summary>
    /// <param name="station">Their station.</param>
    /// <param name="readings">Ascending by begin, of all that is known.</param>
    /// <param name="clock">The site's: rain is known of a date.</param>
    /// <param name="accepted">The site overrules the check of running totals: every fall is a beginning.</param>
    public static CountedRain ToRain(string station, IReadOnlyList<Reading> readings, SiteClock clock, bool accepted)
    {
        if (!readings.Any(r => !double.IsNaN(r.RainCounterMm)))
        {
            return new(readings, [], []);
        }

        var counter = new RainCounter(station, clock, accepted);
        Reading? next = null;
        var nexts = new Reading?[readings.Count];
        for (var i = readings.Count - 1; i >= 0; i--)
        {
            nexts[i] = next;
            next = readings[i].RainCounterMm >= 0 ? readings[i] : next;
        }

        for (var i = 0; i < readings.Count; i++)
        {
            counter.Take(readings[i], nexts[i]);
        }

        counter._rain.AddRange(counter._silent);
        return new(counter._rain, counter._setAside, counter._notKnown);
    }

    /// <param name="reading">The next one.</param>
    /// <param name="next">The one with a total after it; null = there is none yet.</param>
    private void Take(Reading reading, Reading? next)
    {
        var total = reading.RainCounterMm;
        if (double.IsNaN(total))
        {
            _silent.Add(reading);
            return;
        }

        if (_good is null || (total >= 0 && reading.Begin - _good.End > LongestSilence))
        {
            Begin(reading);
            return;
        }

        var grows = total >= _good.RainCounterMm - SameMm;
        if (total < 0 || (!_accepted && (grows ? IsPeak(reading, next) : IsDip(reading, next))))
        {
            // Its rain is in the next good total: until then it is as if it had not been reported.
            SetAside(reading, total < 0 || !grows
                ? string.Create(CultureInfo.InvariantCulture, $"the running total was {_good.RainCounterMm:0.##} mm before: it can only grow, or begin at 0 again")
                : string.Create(CultureInfo.InvariantCulture, $"the running total was {_good.RainCounterMm:0.##} mm before, and nothing after it confirms this one"));
            _silent.Add(reading with { RainCounterMm = double.NaN });
            return;
        }

        Count(reading, grows ? Math.Max(0, total - _good.RainCounterMm) : total);
    }

    /// <summary>
    /// Grew, and is back between what it was and this; or grew by a cloudburst, and is not there to see next time. What it grows by before a
    /// beginning at midnight is rain.
    /// </summary>
    private bool IsPeak(Reading reading, Reading? next)
    {
        var (good, total) = (_good!.RainCounterMm, reading.RainCounterMm);
        var lasts = next?.RainCounterMm >= total - SameMm;
        var cloudburst = total - good > CloudburstMm;
        return !lasts && (cloudburst || (next?.RainCounterMm >= good - SameMm && !BeginsAtMidnight(reading, next)));
    }

    /// <summary>
    /// Fell: it is back where it was, or falls on; with nothing after it, only a low one began again. In a storm over midnight a counter that
    /// begins every day may soon be where it was.
    /// </summary>
    private bool IsDip(Reading reading, Reading? next)
    {
        var (good, total) = (_good!.RainCounterMm, reading.RainCounterMm);
        var most = MostOfStorm * _grewMm;
        var storm = BeginsAtMidnight(_good, reading) && total <= most && (next?.RainCounterMm ?? total) - total <= most;
        return !storm
            && (next is null ? total > MostAfterReset * good : next.RainCounterMm >= good - SameMm || next.RainCounterMm < total - SameMm);
    }

    /// <summary>A fall over midnight of a counter whose total also began the date before at about 0.</summary>
    private bool BeginsAtMidnight(Reading last, Reading first) =>
        _clock.DateOf(first.Begin) == DateOfEnd(last).AddDays(1)
        && _firstOfDate is { } began && began.Date == DateOfEnd(last) && began.TotalMm <= BeginsMm;

    private void Begin(Reading reading)
    {
        _rain.AddRange(_silent);
        _silent.Clear();
        _rain.Add(reading);
        Keep(reading);
    }

    private void Count(Reading reading, double mm)
    {
        var silence = reading.Begin > _good!.End || _silent.Count > 0;
        if (silence && mm > SameMm && DateOfEnd(_good) != _clock.DateOf(reading.Begin))
        {
            SetAside(reading, string.Create(CultureInfo.InvariantCulture, $"{mm:0.##} mm fell while nothing was reported over midnight: which day has them is not known"));
            _notKnown.Add((_good.End, reading.End));
            mm = double.NaN;
        }

        _rain.AddRange(double.IsNaN(mm) ? _silent : Dry(_good.End, _silent, reading.Begin));
        _rain.Add(reading with { RainMm = mm });
        _silent.Clear();
        _grewMm = double.IsNaN(mm) ? 0 : mm;
        Keep(reading);
    }

    private void Keep(Reading reading)
    {
        _good = reading;
        var date = _clock.DateOf(reading.Begin);
        if (_firstOfDate?.Date != date)
        {
            _firstOfDate = (date, reading.RainCounterMm);
        }
    }

    /// <summary>An interval that ends at midnight is of the date that ends.</summary>
    private DateOnly DateOfEnd(Reading reading) => _clock.DateOf(reading.End.AddTicks(-1));

    private void SetAside(Reading reading, string why) => _setAside.Add(new(
        _station, reading.Begin, string.Create(CultureInfo.InvariantCulture, $"{QuantityName.Of(WeatherQuantity.Rain)} total {reading.RainCounterMm:0.##} mm"), why)
    {
        Check = RainTotalCheck.About.Name,
    });

    /// <summary>A silence of which the total tells that its rain, if any, is in the reading after it: its readings and what lies between them, all with 0.</summary>
    private IEnumerable<Reading> Dry(DateTimeOffset begin, IEnumerable<Reading> silent, DateTimeOffset end)
    {
        foreach (var reading in silent)
        {
            foreach (var between in Between(begin, reading.Begin))
            {
                yield return between;
            }

            yield return reading with { RainMm = 0 };
            begin = reading.End;
        }

        foreach (var between in Between(begin, end))
        {
            yield return between;
        }
    }

    private IEnumerable<Reading> Between(DateTimeOffset begin, DateTimeOffset end)
    {
        while (begin < end)
        {
            var midnight = _clock.DayEnd(_clock.DateOf(begin));
            var until = midnight < end ? midnight : end;
            yield return new Reading { Begin = begin, End = until, RainMm = 0 };
            begin = until;
        }
    }
}
