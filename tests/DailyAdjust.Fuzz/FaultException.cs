namespace DailyAdjust.Fuzz;

/// <summary>Something that must hold does not.</summary>
internal sealed class FaultException(string what) : Exception(what);
