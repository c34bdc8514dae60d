using System.Globalization;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>What stands in a file that was not recognised, and what to do about it.</summary>
internal static class WhatItSaw
{
    private const int CellsShown = 12;

    public static Finding Header(TableShape shape)
    {
        var sign = GuessYaml.Delimiter(shape.Delimiter);
        var why = FormattableString.Invariant($"{shape.Header.Count} columns, {shape.Rows.Count} rows looked at");
        why += shape.Units is null ? "" : ", units in the line below";
        why += shape.OtherWidth == 0 ? "" : FormattableString.Invariant($"; {shape.OtherWidth} rows are narrower than the header and will be refused");
        return new("delimiter", FormattableString.Invariant($"{sign}, header in line {shape.HeaderLine}"), shape.OtherWidth <= shape.Rows.Count / 10, why);
    }

    public static IReadOnlyList<Finding> OfNoHeader(SampleText text)
    {
        if (TableShape.RowWithoutHeader(text.Lines) is { } row)
        {
            var names = string.Join(", ", row.Select((_, i) => i == 0 ? "Time" : string.Create(CultureInfo.InvariantCulture, $"Column{i + 1}")).Take(CellsShown));
            return
            [
                new("header", "none", IsSure: true, $"rows begin at once: {Cells(row)}"),
                new("do", "add a header", IsSure: true, $"write a line above the first row that names every column with its unit, such as \"{names}\" with Temp (°F), RH (%), Rain (in) in the right places; most stations can write one themselves"),
            ];
        }

        var first = text.Lines.FirstOrDefault(line => !string.IsNullOrWhiteSpace(line)) ?? "";
        return
        [
            new("header", "none", IsSure: true, first.Length == 0 ? "the file has no text" : $"it begins with \"{Shown.Short(first)}\", and in its first 20 lines none names a time and a quantity above rows of numbers"),
            new("do", "look at the file", IsSure: true, "is it the station's table? A spreadsheet has to be saved as CSV; the header must name a time column and at least one of temperature, humidity, wind, radiation and rain"),
        ];
    }

    public static IReadOnlyList<Finding> OfNoTime(TableShape shape)
    {
        var first = shape.Rows.Count > 0 ? shape.Rows[0] : [];
        var times = Enumerable.Range(0, shape.Header.Count)
            .Where(i => TimeWords.AreIn(new HeaderWords(shape.Header[i])) && i < first.Count)
            .Select(i => $"\"{shape.Header[i]}\" holds \"{Shown.Short(first[i])}\" ... \"{Shown.Short(shape.Rows[^1][i])}\"").ToList();
        return
        [
            Header(shape),
            new("time", "none that can be read", IsSure: true, times.Count > 0 ? string.Join(", ", times) : $"the columns are {Cells(shape.Header)}"),
            new("do", "write the time so that it can be read", IsSure: true, "year, month and day in one column, with the time of day behind it or in a column of its own (2026-06-01 13:00), or seconds since 1970. Not read are milliseconds, days of the year, hours such as 100 or 24, year and month in columns of their own, letters that change with summer time (EST, EDT), and several stations in one file"),
        ];
    }

    private static string Cells(IReadOnlyList<string> cells) => string.Join(", ", cells.Take(CellsShown).Select(cell => $"\"{Shown.Short(cell)}\"")) + (cells.Count > CellsShown ? ", ..." : "");
}
