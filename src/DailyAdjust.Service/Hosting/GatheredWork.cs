using System.Diagnostics;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Work over all sites that every sheet asks for: it is done at once, or, where it was only just done, once for all that ask meanwhile. It takes a tenth of the time at most: with
/// a thousand sites it lasts seconds.
/// </summary>
/// <param name="work">Never two at a time.</param>
internal sealed class GatheredWork(Action work)
{
    private const int RestTimes = 9;
    private readonly Lock _oneAtATime = new();
    private TimeSpan _took;
    private long? _ended;
    private bool _isDue;

    /// <summary>Does it, or leaves it for <see cref="DoDue"/>.</summary>
    public void Ask()
    {
        lock (_oneAtATime)
        {
            if (_ended is { } ended && Stopwatch.GetElapsedTime(ended) < _took * RestTimes)
            {
                _isDue = true;
            }
            else
            {
                Do();
            }
        }
    }

    /// <summary>Does it where somebody asked since.</summary>
    public void DoDue()
    {
        lock (_oneAtATime)
        {
            if (_isDue)
            {
                Do();
            }
        }
    }

    private void Do()
    {
        var begun = Stopwatch.GetTimestamp();
        work();
        _isDue = false;
        _ended = Stopwatch.GetTimestamp();
        _took = Stopwatch.GetElapsedTime(begun, _ended.Value);
    }
}
