using System.Globalization;

namespace DailyAdjust.Reports.Words;

/// <summary>How files write dates, times and sheets; machines read them, so they are never translated.</summary>
internal static class CodeWords
{
    public static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>yyyy-MM-ddTHH:mm on the clock whose time it is.</summary>
    public static string Minute(DateTimeOffset local) => local.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    /// <summary>yyyy-MM-dd HH:mm, as the logbook has it.</summary>
    public static string LogTime(DateTimeOffset local) => local.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The sheet's id: 2026-06-10/1.</summary>
    public static string SheetId(DateOnly date, int issue) => Date(date) + "/" + issue.ToString(CultureInfo.InvariantCulture);
}
