using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;

namespace DailyAdjust.Fuzz.Checks;

/// <summary>A number of everything that an object says, down to its lists' items; two that say the same have the same one.</summary>
internal static class Fingerprint
{
    private const int Deepest = 24;

    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Properties = new();

    public static ulong Of(object? value) => Add(14695981039346656037, value, 0);

    private static ulong Add(ulong hash, object? value, int depth) => value switch
    {
        null => Mix(hash, 7),
        string text => text.Aggregate(Mix(hash, 11), (h, c) => Mix(h, c)),
        double number => Mix(hash, (ulong)BitConverter.DoubleToInt64Bits(number)),
        Enum or bool or char or byte or int or long => Mix(hash, unchecked((ulong)Convert.ToInt64(value, null))),
        DateTimeOffset instant => Mix(hash, (ulong)instant.UtcTicks),
        DateOnly date => Mix(hash, (ulong)date.DayNumber),
        TimeOnly time => Mix(hash, (ulong)time.Ticks),
        TimeSpan span => Mix(hash, (ulong)span.Ticks),
        TimeZoneInfo zone => Add(hash, zone.Id, depth),
        Uri uri => Add(hash, uri.OriginalString, depth),
        IDictionary map => map.Count < 2 ? Items(hash, map, depth) : Items(hash, Ordered(map), depth),
        IEnumerable items => Items(hash, items, depth),
        _ => depth > Deepest ? throw new FaultException($"{value.GetType().Name} lies {Deepest} levels deep")
            : Parts(value.GetType()).Aggregate(Add(hash, value.GetType().Name, depth), (h, part) => Add(h, part.GetValue(value), depth + 1)),
    };

    /// <summary>Of a map the order says nothing.</summary>
    private static IEnumerable<object> Ordered(IDictionary map) => map.Keys.Cast<object>().OrderBy(key => key.ToString(), StringComparer.Ordinal).SelectMany(key => new[] { key, map[key]! });

    private static ulong Items(ulong hash, IEnumerable items, int depth)
    {
        var count = 0UL;
        foreach (var item in items)
        {
            (hash, count) = (Add(hash, item, depth + 1), count + 1);
        }

        return Mix(hash, count);
    }

    /// <summary>What it was made of: what follows from that says nothing more.</summary>
    private static PropertyInfo[] Parts(Type type) => Properties.GetOrAdd(type, static t => [.. t.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && (p.CanWrite || t.IsValueType))]);

    private static ulong Mix(ulong hash, ulong value)
    {
        hash = (hash ^ value) * 1099511628211;
        return hash ^ (hash >> 29);
    }
}
