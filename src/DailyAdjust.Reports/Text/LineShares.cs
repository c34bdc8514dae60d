namespace DailyAdjust.Reports.Text;

/// <summary>How many lines each section is given.</summary>
internal static class LineShares
{
    /// <summary>First each section's least, then all that it wants, both in the sections' order of need. A section that its least has no room for gets none, but one that is kept.</summary>
    /// <param name="sections">As they are read.</param>
    /// <param name="room">Lines for all of them together; none where it is below 0.</param>
    public static IReadOnlyList<int> Of(IReadOnlyList<ShortSection> sections, int room)
    {
        var shares = new int[sections.Count];
        var order = Enumerable.Range(0, sections.Count).OrderBy(i => sections[i].Order).ToList();
        foreach (var i in order)
        {
            var least = Math.Min(sections[i].Least, sections[i].Wanted);
            if (least <= room || sections[i].IsKept)
            {
                shares[i] = least;
                room -= least;
            }
        }

        foreach (var i in order.Where(i => shares[i] > 0))
        {
            var more = Math.Clamp(sections[i].Wanted - shares[i], 0, Math.Max(room, 0));
            shares[i] += more;
            room -= more;
        }

        return shares;
    }
}
