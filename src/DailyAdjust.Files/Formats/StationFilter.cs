using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// Which rows of a file are of the station that the source means. A file of one station needs no code; in one of several, rows of the others
/// are passed over and told of once.
/// </summary>
internal sealed class StationFilter(WeatherSource source, FormatRows rows)
{
    private const int NamesTold = 10;

    private readonly string? _wanted = source.StationCode?.Trim();
    private readonly List<string> _others = [];
    private string? _only;
    private bool _found;
    private int _firstOther;
    private long _count;

    /// <summary>Whether the row is to be read.</summary>
    /// <param name="code">The station that the row names; blanks at its ends and zeros before a number make no difference.</param>
    public bool Takes(ReadOnlySpan<char> code, int line)
    {
        code = code.Trim();
        if (IsSame(code, _wanted ?? _only))
        {
            _found = true;
            return true;
        }

        if (_wanted is null && _only is null)
        {
            (_only, _found) = (code.ToString(), true);
            return true;
        }

        _count++;
        _firstOther = _firstOther == 0 ? line : _firstOther;
        if (_others.Count < NamesTold && !IsKnown(code))
        {
            _others.Add(code.ToString());
        }

        return false;
    }

    /// <summary>After the last row.</summary>
    public void Finish()
    {
        rows.PassedOver = _count;
        if (_count == 0)
        {
            return;
        }

        var others = string.Join(", ", _others.Select(code => Shown.Short(code))) + (_others.Count == NamesTold ? " ..." : "");
        if (_wanted is null)
        {
            rows.RefuseFile(_firstOther, 1, $"the file has rows of several stations: {Shown.Short(_only)}, {others}", "Say in the site which is meant, with station: and its code");
        }
        else if (_found)
        {
            rows.Tell("other stations", _firstOther, 1, FormattableString.Invariant($"{_count} rows of other stations are passed over: {others}"), $"The site names station {Shown.Short(_wanted)}");
        }
        else
        {
            rows.Tell("other stations", _firstOther, 1, FormattableString.Invariant($"the file has no row of station {Shown.Short(_wanted)}; it has {_count} of {others}"), "Correct station: in the site, or is it another station's file?");
        }
    }

    private bool IsKnown(ReadOnlySpan<char> code)
    {
        foreach (var other in _others)
        {
            if (IsSame(code, other))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsSame(ReadOnlySpan<char> code, string? other) =>
        other is not null && code.TrimStart('0').Equals(other.AsSpan().TrimStart('0'), StringComparison.OrdinalIgnoreCase);
}
