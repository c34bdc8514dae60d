using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Sites;

/// <summary>The header of stations.csv: which columns stand where, and the unit in each one's brackets.</summary>
internal sealed class StationColumns
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

    private readonly Dictionary<string, (int At, Unit? Unit)> _columns = new(StringComparer.Ordinal);

    private StationColumns(int width)
    {
        Width = width;
    }

    public int Width { get; }

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

        foreach (var column in new[] { Controller, Station, Area }.Where(c => !read._columns.ContainsKey(c)))
        {
            read.Complete = false;
            problems.Error(header.Line, 1, $"the column {Wording.Quote(column)} is missing", "the first line names the columns; see docs/stations-csv.md");
        }

        read.Programs = programs;
        return read;
    }

    public string Cell(CsvRow row, string column) => _columns.TryGetValue(column, out var c) && c.At < row.Cells.Count ? row.Cells[c.At] : "";

    public bool Has(string column) => _columns.ContainsKey(column);

    /// <summary>From 1.</summary>
    public int Place(string column) => _columns.TryGetValue(column, out var c) ? c.At + 1 : 1;

    /// <summary>The unit of a measured column; null where its header was wrong, which has been told.</summary>
    public Unit? UnitOf(string column) => _columns.TryGetValue(column, out var c) ? c.Unit : null;

    private void Add(CsvRow header, int i, string[] knownPrograms, List<string> programs, ProblemList problems)
    {
        var title = header.Cells[i];
        var (name, unit) = HeaderUnit.Split(title);
        if (name.StartsWith(Minutes, StringComparison.OrdinalIgnoreCase))
        {
            AddMinutes(header.Line, i, name[Minutes.Length..].Trim(), unit, knownPrograms, programs, problems);
        }
        else if (Array.Find(Measured, m => Same(m.Column, name)) is { Column: not null } measured)
        {
            Put(measured.Column, i, header.Line, MeasuredCell.UnitOf(unit, measured.Kind, title, header.Line, i, problems), problems);
        }
        else if (Names.Find(Plain, title) is { } plain)
        {
            Put(plain, i, header.Line, null, problems);
        }
        else
        {
            string[] known = [.. Plain, .. Measured.Select(m => m.Column), .. knownPrograms.Select(p => Minutes + p)];
            problems.Error(header.Line, i + 1, $"{Wording.Quote(title)} is not a column that is known here", Wording.DidYouMean(name, known, "known columns"));
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

    private void Put(string column, int i, int line, Unit? unit, ProblemList problems)
    {
        if (!_columns.TryAdd(column, (i, unit)))
        {
            problems.Error(line, i + 1, $"the column {Wording.Quote(column)} stands there twice", "keep one of them");
        }
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
