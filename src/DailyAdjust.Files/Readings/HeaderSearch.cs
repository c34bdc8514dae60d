using DailyAdjust.Core.Sites;
using nietras.SeparatedValues;

namespace DailyAdjust.Files.Readings;

/// <summary>Finds the header among a file's first lines, and the delimiter with it.</summary>
internal static class HeaderSearch
{
    private const int Lines = 20;

    private static readonly char[] Delimiters = [',', ';', '\t', '|'];

    /// <summary>Reads up to the header. Where none fits, the line that has most of the wanted columns says what is missing.</summary>
    public static (ColumnMap? Map, char Delimiter, IReadOnlyList<Problem> Problems) Find(string file, LineReader lines, WeatherSource source)
    {
        var wanted = ColumnMap.Wanted(source);
        var (best, bestLine, bestDelimiter, bestCells) = (0, 0, ',', (IReadOnlyList<string>)[]);
        var (notText, firstLine) = (0, "");
        while (lines.Number < Lines && lines.TryRead(out var line))
        {
            notText = notText == 0 && lines.Fault == LineFault.NotText ? lines.Number : notText;
            if (line.IsWhiteSpace())
            {
                continue;
            }

            firstLine = firstLine.Length == 0 ? line.ToString() : firstLine;
            foreach (var delimiter in source.Delimiter is { } given ? [given] : Delimiters)
            {
                var cells = Cells(line.ToString(), delimiter);
                var names = new HeaderText(cells);
                var has = wanted.Count(header => names.Find(header) != HeaderText.Absent);
                if (has > best)
                {
                    (best, bestLine, bestDelimiter, bestCells) = (has, lines.Number, delimiter, cells);
                }
            }

            if (best == wanted.Count)
            {
                break;
            }
        }

        if (best > 0)
        {
            var units = best == wanted.Count && source.UnitsBelow ? UnitCells(lines, bestDelimiter) : [];
            var (map, faults) = ColumnMap.Bind(bestCells, source, units);
            return (map, bestDelimiter, [.. faults.Select(fault => new Problem(file, bestLine, fault.Column, fault.What, fault.Hint))]);
        }

        return (null, ',', [NoHeader(file, notText, firstLine, wanted)]);
    }

    private static IReadOnlyList<string> UnitCells(LineReader lines, char delimiter)
    {
        while (lines.TryRead(out var line))
        {
            if (!line.IsWhiteSpace())
            {
                return Cells(line.ToString(), delimiter);
            }
        }

        return [];
    }

    /// <summary>One line as cells, quotes removed.</summary>
    public static IReadOnlyList<string> Cells(string line, char delimiter)
    {
        line = delimiter == ' ' ? LineText.SingleBlanks(line) : line;
        using var reader = Sep.New(delimiter).Reader(o => o with { HasHeader = false, DisableColCountCheck = true, Unescape = true }).FromText(line);
        var cells = new List<string>();
        foreach (var row in reader)
        {
            for (var i = 0; i < row.ColCount; i++)
            {
                cells.Add(row[i].ToString());
            }
        }

        return cells;
    }

    private static Problem NoHeader(string file, int notText, string firstLine, IReadOnlyList<string> wanted)
    {
        if (notText > 0)
        {
            return new Problem(file, notText, 1, "the file is not text", "Save it as CSV in UTF-8");
        }

        return firstLine.Length == 0
            ? new Problem(file, 1, 1, "there is no text in the file's first lines", "Nothing was read from it")
            : new Problem(
                file, 1, 1, FormattableString.Invariant($"no header with \"{string.Join("\", \"", wanted)}\" in the first {Lines} lines"),
                $"The file begins with \"{Shown.Short(firstLine)}\"; is it this station's file, and does the column map spell its headers?");
    }
}
