using System.Runtime.InteropServices;

namespace DailyAdjust.Core.Irrigation;

/// <summary>Whether one comes after another; by reference, for millions are asked.</summary>
internal delegate bool ComesAfter<T>(in T one, in T other);

/// <summary>The events of one day: few, and mostly in order already.</summary>
internal static class FewEvents
{
    /// <summary>Sorts them; equal ones keep their order.</summary>
    public static void Sort<T>(List<T> events, ComesAfter<T> comesAfter)
    {
        var all = CollectionsMarshal.AsSpan(events);
        for (var i = 1; i < all.Length; i++)
        {
            if (!comesAfter(all[i - 1], all[i]))
            {
                continue;
            }

            var current = all[i];
            var j = i - 1;
            while (j >= 0 && comesAfter(all[j], current))
            {
                all[j + 1] = all[j];
                j--;
            }

            all[j + 1] = current;
        }
    }
}
