using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Sites;

/// <summary>The header of stations.csv: which columns stand where, and the unit in each one's brackets.</summary>
internal sealed class StationColumns : MeasuredHeader
{
    public const string Controller = "controller";
    public const string Station = "station";
    public const string Name = "name";
    public const string Area = "area";
    public const string Rate = "precipitation rate";
    public const string RateKnown = "rate known";
    public const string Uniformity = "distribution uniformity";
    public const string Flow = "flow";
    public const string Ground = "area watered";
    public const string Exposure = "exposure";
    public const string Gauge = "gauge";
    public const string Note = "note";

    /// <summary>Before the program's id.</summary>
    public const string Minutes = "minutes ";

    private static readonly string[] Plain = [Controller, Station, Name, Area, RateKnown, Exposure, Gauge, Note];

    private static readonly (string Column, UnitKind Kind)[] Measured = [(Rate, UnitKind.DepthRate), (Uniformity, UnitKind.Percent), (Flow, UnitKind.Flow), (Ground, UnitKind.Area)];

    private StationColumns(int width)
        : base(width)
    {
    }

    /// <summary>The columns that no station can do without are there.</summary>
    public bool Complete { get; private set; } = true;

    /// <summary>Program ids with a column of minutes, in the order of the columns.</summary>
    public IReadOnlyList<string> Programs { get; private set; } = [];

    public static StationColumns Read(CsvRow header, IReadOnlyList<Controller> controllers, ProblemList problems)
    {
        var read = new StationColumns(header.Cells.Count);
        var programs = new List<string>();
        string[] known = [.. controllers.SelectMany(c => c.Programs).Select(p => p.Id).Distinct(StringComparer.OrdinalIgnoreCase)];
        for (var i = 0; i < header.Cells.Count; i++)
        {
            if (header.Cells[i].Length > 0)
            {
                read.Add(header, i, known, programs, problems);
            }
        }

        foreach (var column in new[] { Controller, Station, Area }.Where(c => !read.Has(c)))
        {
            read.Complete = false;
            problems.Error(header.Line, 1, $"the column {Wording.Quote(column)} is missing", "the first line names the columns; see docs/stations-csv.md");
        }

        read.Programs = programs;
        return read;
    }

    private void Add(CsvRow header, int i, string[] knownPrograms, List<string> programs, ProblemList problems)
    {
        var (name, unit) = HeaderUnit.Split(header.Cells[i]);
        if (name.StartsWith(Minutes, StringComparison.OrdinalIgnoreCase))
        {
            AddMinutes(header.Line, i, name[Minutes.Length..].Trim(), unit, knownPrograms, programs, problems);
        }
        else
        {
            Add(header, i, Plain, Measured, knownPrograms.Select(p => Minutes + p), problems);
        }
    }

    private void AddMinutes(int line, int i, string program, string? unit, string[] knownPrograms, List<string> programs, ProblemList problems)
    {
        if (Names.Find(knownPrograms, program) is not { } id)
        {
            problems.Error(line, i + 1, $"no controller has a program {Wording.Quote(program)}", Wording.DidYouMean(program, knownPrograms, "programs"));
            return;
        }

        programs.Add(id);
        Put(Minutes + id, i, line, unit is null ? Units.Find("min", UnitKind.Duration) : MeasuredCell.UnitOf(unit, UnitKind.Duration, unit, line, i, problems), problems);
    }
}
