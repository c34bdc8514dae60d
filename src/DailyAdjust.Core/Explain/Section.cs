namespace DailyAdjust.Core.Explain;

/// <summary>Steps that belong together. A symbol means the last step before that has it, in this section or an earlier one.</summary>
/// <param name="Title">In words.</param>
/// <param name="Steps">In the order in which a person would reckon.</param>
public sealed record Section(string Title, IReadOnlyList<Step> Steps)
{
    /// <summary>Of steps that repeat others (hour after hour, zone after zone): the symbols of which one row gives the numbers unless all is asked for. Empty = always in full.</summary>
    public IReadOnlyList<string> Brief { get; init; } = [];

    /// <summary>The one of those that repeat that is worked out as the example.</summary>
    public bool IsExample { get; init; }

    public bool Repeats => Brief.Count > 0;
}
