namespace DailyAdjust.Core.Weather;

/// <summary>
/// One gauge's rain on one date, from its instrument and from what people read off it. Never estimated: a day of which less
/// than 90 % is known is unknown.
/// </summary>
internal sealed class RainDay
{
    private readonly List<RainFall> _falls = [];
    private readonly DaySpan _day;
    private readonly RainSpan? _whole;
    private readonly List<RainSpan> _booked;
    private readonly TimeSpan _measured;
    private readonly TimeSpan _covered;
    private readonly bool _doubtful;

    /// <param name="day">The date.</param>
    /// <param name="readings">The instrument's of the day; empty for a gauge that is read by hand.</param>
    /// <param name="readsDaily">The instrument reports once a day: its total is booked at 00:00.</param>
    /// <param name="spans">The gauge's entries.</param>
    /// <param name="aside">Intervals whose rain was set aside: unless entries cover them, the day is not known however much of it is.</param>
    public RainDay(
        DaySpan day, IReadOnlyList<Reading> readings, bool readsDaily, IReadOnlyList<RainSpan> spans, IReadOnlyList<(DateTimeOffset Begin, DateTimeOffset End)> aside)
    {
        _day = day;
        _whole = spans.LastOrDefault(s => s.WholeDate == day.Date);
        List<RainSpan> timed = [.. spans.Where(s => s.WholeDate is null)];
        _booked = [.. timed.Where(s => day.Holds(s.From))];
        _doubtful = aside.Any(a => Sum(timed.Select(s => s.Within(a.Begin, a.End))) < a.End - a.Begin);
        _covered = Sum(timed.Select(s => s.Within(day.Begin, day.End)));
        if (_whole is not null)
        {
            Add(day.Begin, _whole.Mm);
            return;
        }

        foreach (var reading in readings.Where(r => !double.IsNaN(r.RainMm)))
        {
            // Where an entry covers a part of an interval, the instrument's rain is taken to have fallen evenly in it.
            var length = reading.End - reading.Begin;
            var open = length - Sum(timed.Select(s => s.Within(reading.Begin, reading.End)));
            _measured += open;
            Add(readsDaily ? day.Begin : reading.End, reading.RainMm * (open / length));
        }

        foreach (var span in _booked)
        {
            Add(span.To, span.Mm);
        }

        _falls.Sort((a, b) => a.At.CompareTo(b.At));
    }

    /// <summary>Anything at all is known of the date.</summary>
    public bool KnowsAnything => _whole is not null || _booked.Count > 0 || _measured + _covered > TimeSpan.Zero;

    /// <summary>Of a finished day.</summary>
    public GaugeDay Finished(string gauge)
    {
        // A gauge that was read after the day's end held the day's rain, even if the span of 24 hours does not reach back to 00:00.
        var known = _whole is not null || (!_doubtful && IsEnough(_measured + _covered)) || _booked.Exists(s => s.To >= _day.End);
        var missing = _whole is not null || _booked.Exists(s => s.To >= _day.End) ? TimeSpan.Zero : _day.Length - _measured - _covered;
        return known ? Known(gauge) with { MissingH = Math.Max(0, Math.Round(missing.TotalHours, 4)) } : new GaugeDay(gauge, null, [], RainBasis.Unknown, TotalMm());
    }

    /// <summary>Of a day that is still running: what is known of it; no rain beside a doubtful interval is not known to be none.</summary>
    public GaugeDay SoFar(string gauge) =>
        (KnowsAnything && (_whole is not null || !_doubtful || _falls.Count > 0) ? Known(gauge) : new GaugeDay(gauge, null, [], RainBasis.Unknown, 0)) with { IsPartAside = _whole is null && _doubtful };

    private static TimeSpan Sum(IEnumerable<TimeSpan> times) => new(times.Sum(t => t.Ticks));

    private GaugeDay Known(string gauge)
    {
        var byPeople = _whole is not null || _booked.Count > 0 || (_covered > TimeSpan.Zero && !IsEnough(_measured));
        return new GaugeDay(gauge, TotalMm(), _falls, byPeople ? RainBasis.Logbook : RainBasis.Measured, 0);
    }

    private bool IsEnough(TimeSpan time) => (double)time.Ticks / _day.Length.Ticks >= DayInputs.LeastShare - DayInputs.ShareTolerance;

    private double TotalMm() => _falls.Sum(f => f.Mm);

    private void Add(DateTimeOffset at, double mm)
    {
        if (mm > 0)
        {
            _falls.Add(new RainFall(at < _day.End ? at : _day.End, mm));
        }
    }
}
