using DailyAdjust.Core.Quantities;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Audits;

/// <summary>The header of a file of catch cups. Whatever is wrong with it, rows are read by the columns that are there.</summary>
internal sealed class CupColumns : MeasuredHeader
{
    public const string Where = "where";
    public const string Cup = "cup";
    public const string Volume = "volume";
    public const string Depth = "depth";
    public const string ThroatArea = "throat area";
    public const string ThroatDiameter = "throat diameter";
    public const string RunTime = "run time";
    public const string Wind = "wind speed";
    public const string Note = "note";

    private const string Page = "see docs/audit.md";

    private static readonly string[] Plain = [Where, Cup, Note];

    private static readonly (string Column, UnitKind Kind)[] Measured =
    [
        (Volume, UnitKind.Volume), (Depth, UnitKind.Depth), (ThroatArea, UnitKind.Area), (ThroatDiameter, UnitKind.Length), (RunTime, UnitKind.Duration), (Wind, UnitKind.Speed),
    ];

    private CupColumns(CsvRow header)
        : base(header.Cells.Count)
    {
    }

    /// <summary>Volume or depth, whichever the file has.</summary>
    public string Caught => Has(Volume) ? Volume : Depth;

    /// <summary>Throat area or diameter, whichever the file has.</summary>
    public string Throat => Has(ThroatArea) ? ThroatArea : ThroatDiameter;

    /// <summary>The columns; what is wrong with them is told.</summary>
    public static CupColumns Read(CsvRow header, ProblemList problems)
    {
        var columns = new CupColumns(header);
        for (var i = 0; i < header.Cells.Count; i++)
        {
            if (header.Cells[i].Length > 0)
            {
                columns.Add(header, i, Plain, Measured, [], problems);
            }
        }

        columns.CheckSet(header.Line, problems);
        return columns;
    }

    private void CheckSet(int line, ProblemList problems)
    {
        foreach (var column in new[] { Where, RunTime }.Where(c => !Has(c)))
        {
            problems.Error(line, 1, $"the column {Wording.Quote(column)} is missing", $"the first line names the columns; {Page}");
        }

        if (Has(Volume) == Has(Depth))
        {
            problems.Error(line, 1, Has(Volume) ? "the file has both volume and depth" : "neither volume nor depth is there", $"one of them says what each cup caught; {Page}");
        }
        else if (Has(Volume) && Has(ThroatArea) == Has(ThroatDiameter))
        {
            problems.Error(line, 1, Has(ThroatArea) ? "the file has both throat area and throat diameter" : "neither throat area nor throat diameter is there", $"a volume becomes a depth by one of them; {Page}");
        }
        else if (Has(Depth) && (Has(ThroatArea) || Has(ThroatDiameter)))
        {
            problems.Error(line, Place(Throat), $"a depth needs no {Throat}", "take the column out, or give volumes");
        }
    }
}
