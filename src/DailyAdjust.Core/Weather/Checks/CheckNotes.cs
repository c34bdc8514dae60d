using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>What the checks of one station's day find; it knows which checks the site overrules.</summary>
/// <param name="site">Its place and clock.</param>
/// <param name="source">The station.</param>
/// <param name="day">Only what begins in it is noted.</param>
internal sealed class CheckNotes(Site site, WeatherSource source, DaySpan day)
{
    private readonly List<SetAsideValue> _setAside = [];

    public Site Site => site;

    public WeatherSource Source => source;

    public DaySpan Day => day;

    /// <summary>The sun over the site on the day.</summary>
    public SunOfDay Sun { get; } = new(site, day.Date);

    /// <summary>Limits of the site's latitude in the day's half of the year.</summary>
    public ClimateLimits Climate { get; } = ClimateLimits.Of(site.LatitudeDeg, day.Date);

    public IReadOnlyList<SetAsideValue> SetAside => _setAside;

    /// <summary>Intervals of the day whose rain was set aside so that the day's total is not known.</summary>
    public List<(DateTimeOffset Begin, DateTimeOffset End)> RainAside { get; } = [];

    /// <summary>Notes that the rain of an interval of the day is not known.</summary>
    public void RainNotKnown(Reading reading)
    {
        if (day.Holds(reading.Begin))
        {
            RainAside.Add((reading.Begin, reading.End));
        }
    }

    /// <summary>Notes a value that a check found; false where the site overrules the check: the value then counts.</summary>
    public bool IsAside(WeatherCheck check, Reading reading, WeatherQuantity quantity, double value, string unit, string why)
    {
        if (source.Accepts(check, quantity))
        {
            return false;
        }

        Note(check, reading, quantity, value, unit, why, 1);
        return true;
    }

    /// <summary>Notes several values of one quantity at the first of them that begins in the day.</summary>
    public void Note(WeatherCheck check, Reading first, WeatherQuantity quantity, double value, string unit, string why, int values) =>
        Note(check.Name, first, string.Create(CultureInfo.InvariantCulture, $"{QuantityName.Of(quantity)} {value:0.###} {unit}"), why, values);

    /// <summary>Notes what begins in the day.</summary>
    /// <param name="what">Begins with the quantity's name.</param>
    public void Note(string check, Reading first, string what, string why, int values)
    {
        if (day.Holds(first.Begin))
        {
            _setAside.Add(new(source.Id, first.Begin, what, why) { Check = check, Values = values });
        }
    }
}
