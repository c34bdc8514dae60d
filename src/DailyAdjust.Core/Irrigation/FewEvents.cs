namespace DailyAdjust.Core.Irrigation;

/// <summary>The events of one day: few, and mostly in order already.</summary>
internal static class FewEvents
{
    /// <summary>Sorts them; equal ones keep their order.</summary>
    public static void Sort<T>(List<T> events, Comparison<T> inOrder)
    {
        for (var i = 1; i < events.Count; i++)
        {
            var current = events[i];
            var j = i - 1;
            while (j >= 0 && inOrder(events[j], current) > 0)
            {
                events[j + 1] = events[j];
                j--;
            }

            events[j + 1] = current;
        }
    }
}
