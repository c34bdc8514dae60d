namespace DailyAdjust.Core.Irrigation;

/// <summary>A start that a controller really has: the program's own, or one of the grow-in that stands in their place.</summary>
/// <param name="Start">When.</param>
/// <param name="GrowIn">What a grow-in runs in it; null = the program's own start.</param>
internal readonly record struct StartInForce(ProgramStart Start, (GrowIn GrowIn, GrowInDay Day)? GrowIn)
{
    /// <summary>The start at what it runs.</summary>
    public DueStart Due(PlannedProgram program, double percent) => new(program, Start, percent) { GrowIn = GrowIn };
}
