namespace DailyAdjust.Core.Explain;

/// <summary>A number that goes into an equation.</summary>
/// <param name="Symbol">As the equation writes it.</param>
/// <param name="Value">In the unit that the equation asks for.</param>
public readonly record struct Term(string Symbol, double Value);
