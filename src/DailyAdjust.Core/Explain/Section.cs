namespace DailyAdjust.Core.Explain;

/// <summary>Steps that belong together. A symbol means the last step before that has it, in this section or an earlier one.</summary>
/// <param name="Title">In words.</param>
/// <param name="Steps">In the order in which a person would reckon.</param>
public sealed record Section(string Title, IReadOnlyList<Step> Steps)
{
    /// <summary>Steps that repeat an equation already shown (hour after hour): printed as one row each unless asked for.</summary>
    public bool Repeats { get; init; }
}

/// <summary>The chain from the readings to one result.</summary>
/// <param name="Title">Of what.</param>
/// <param name="Sections">In order.</param>
public sealed record Explanation(string Title, IReadOnlyList<Section> Sections)
{
    public IEnumerable<Step> Steps => Sections.SelectMany(s => s.Steps);
}
