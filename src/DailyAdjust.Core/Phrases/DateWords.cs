using System.Globalization;

namespace DailyAdjust.Core.Phrases;

/// <summary>Dates as people say them.</summary>
public static class DateWords
{
    private static readonly DateTimeFormatInfo English = CultureInfo.InvariantCulture.DateTimeFormat;

    /// <summary>"Wed".</summary>
    public static Phrase Weekday(DayOfWeek day) => new(English.GetAbbreviatedDayName(day));

    /// <summary>"June".</summary>
    public static Phrase MonthName(DateOnly date) => new(English.GetMonthName(date.Month));

    /// <summary>"Jun".</summary>
    public static Phrase ShortMonthName(DateOnly date) => new(English.GetAbbreviatedMonthName(date.Month));

    /// <summary>"June 2026".</summary>
    public static Phrase Month(DateOnly date)
    {
        var month = new Phrase(English.GetMonthName(date.Month) + " ");
        month.AppendFormatted(date.Year);
        return month;
    }

    /// <summary>"10 June".</summary>
    public static Phrase DayMonth(DateOnly date) => Phrase.Counted(date.Day, English.GetMonthName(date.Month));

    /// <summary>"10 Jun".</summary>
    public static Phrase DayShortMonth(DateOnly date) => Phrase.Counted(date.Day, English.GetAbbreviatedMonthName(date.Month));

    /// <summary>"Wed 10 June".</summary>
    public static Phrase Date(DateOnly date) => $"{Weekday(date.DayOfWeek)} {DayMonth(date)}";

    /// <summary>"Wed 10 Jun".</summary>
    public static Phrase ShortDate(DateOnly date) => $"{Weekday(date.DayOfWeek)} {DayShortMonth(date)}";

    /// <summary>"Wednesday 10 June 2026".</summary>
    /// <remarks>The month stands in the template: other languages put words between it and the year.</remarks>
    public static Phrase LongDate(DateOnly date)
    {
        var said = new Phrase("");
        said.AppendFormatted(new Phrase(English.GetDayName(date.DayOfWeek)));
        said.AppendLiteral(" ");
        said.AppendFormatted(date.Day);
        said.AppendLiteral($" {English.GetMonthName(date.Month)} ");
        said.AppendFormatted(date.Year);
        return said;
    }
}
