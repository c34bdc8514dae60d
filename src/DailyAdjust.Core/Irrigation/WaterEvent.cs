namespace DailyAdjust.Core.Irrigation;

/// <summary>What changes the root zone at an instant; the order in which events of one instant count.</summary>
internal enum WaterKind
{
    Rain,
    Irrigation,
    Hose,
    Probe,
}

/// <summary>One event in a zone's day.</summary>
/// <param name="At">UTC.</param>
/// <param name="Kind">What it is.</param>
/// <param name="DrawnBy">Share of the day's ETc that was drawn by then, f(t).</param>
/// <param name="AmountMm">Water that reaches the soil; for a probe the depletion that it shows.</param>
/// <param name="Slot">Number of the start whose water is still to be decided; -1 = the amount stands.</param>
internal readonly record struct WaterEvent(DateTimeOffset At, WaterKind Kind, double DrawnBy, double AmountMm, int Slot = -1)
{
    /// <summary>By time, then kind.</summary>
    public static readonly ComesAfter<WaterEvent> Later = (in WaterEvent one, in WaterEvent other) =>
        one.At > other.At || (one.At == other.At && one.Kind > other.Kind);

    /// <summary>A start of a grow-in: its amount stands though it has a slot.</summary>
    public bool GrowsIn { get; init; }

    /// <summary>Puts the share that was really drawn by each event in place of the draw curve's.</summary>
    public static void Redraw(List<WaterEvent> events, Func<double, double> shareDrawn)
    {
        for (var i = 0; i < events.Count; i++)
        {
            events[i] = events[i] with { DrawnBy = shareDrawn(events[i].DrawnBy) };
        }
    }

    /// <summary>By time, then kind; equal ones keep their order.</summary>
    public static void Sort(List<WaterEvent> events) => FewEvents.Sort(events, Later);
}
