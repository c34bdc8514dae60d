using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Recorded;

/// <summary>Everything that a result holds, as text: the same on every machine.</summary>
internal static class Dump
{
    /// <summary>Beyond the last bits in which machines differ, and far within what a mistake changes.</summary>
    private const int Decimals = 6;

    public static string Of(object? value)
    {
        var text = new StringBuilder();
        Write(text, value);
        return text.ToString();
    }

    private static void Write(StringBuilder text, object? value)
    {
        switch (value)
        {
            case null:
                text.Append('~');
                break;
            case double number:
                text.Append((Math.Round(number, Decimals) + 0.0).ToString("R", CultureInfo.InvariantCulture));
                break;
            case string said:
                text.Append('"').Append(said).Append('"');
                break;
            case Phrase phrase:
                text.Append('"').Append(phrase.In(Language.English)).Append('"');
                break;
            case DateTimeOffset at:
                // Instants of the sun are reckoned; a second is far within a minute on a sheet.
                text.Append(at.UtcDateTime.AddTicks(TimeSpan.TicksPerSecond / 2).ToString("yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture));
                break;
            case Site or SiteClock or TimeZoneInfo or WeatherSource:
                text.Append('#');
                break;
            case Station station:
                text.Append(station.Key);
                break;
            case Area area:
                text.Append(area.Name);
                break;
            case Controller controller:
                text.Append(controller.Id);
                break;
            case IFormattable plain when value.GetType().IsPrimitive || value is Enum or DateOnly or TimeOnly or TimeSpan or decimal:
                text.Append(plain.ToString(null, CultureInfo.InvariantCulture));
                break;
            case bool yes:
                text.Append(yes ? 't' : 'f');
                break;
            case Delegate or Type:
                break;
            case IDictionary entries:
                Items(text, entries.Keys.Cast<object>().Select(key => (Of(key), entries[key])).OrderBy(e => e.Item1, StringComparer.Ordinal).SelectMany(e => new[] { e.Item1, e.Item2 }));
                break;
            case IEnumerable items:
                Items(text, items.Cast<object?>());
                break;
            default:
                text.Append('{');
                foreach (var property in Of(value.GetType()))
                {
                    text.Append(property.Name).Append('=');
                    Write(text, property.GetValue(value));
                    text.Append(' ');
                }

                text.Append("}\n");
                break;
        }
    }

    private static void Items(StringBuilder text, IEnumerable<object?> items)
    {
        text.Append('[');
        foreach (var item in items)
        {
            Write(text, item);
            text.Append(", ");
        }

        text.Append(']');
    }

    private static IEnumerable<PropertyInfo> Of(Type type) => type
        .GetProperties(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance)
        .Where(p => p.GetIndexParameters().Length == 0 && p.Name is not "EqualityContract" && !p.Name.Contains('.', StringComparison.Ordinal))
        .OrderBy(p => p.Name, StringComparer.Ordinal);
}
