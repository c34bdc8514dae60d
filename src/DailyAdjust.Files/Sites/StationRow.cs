using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>One row of stations.csv while it is being read.</summary>
internal sealed class StationRow(CsvRow row, StationColumns columns, SiteDraft draft, ProblemList problems)
{
    private static readonly Limits MostMinutes = new(0, 1440);
    private static readonly Limits FlowLPerMin = new(0, 100_000, AboveMin: true);
    private static readonly Limits UniformityPercent = new(0, 100, AboveMin: true);
    private static readonly Limits GroundM2 = new(0, 1_000_000, AboveMin: true);

    private bool _bad;

    /// <summary>The station, or null when anything in the row is wrong.</summary>
    public Station? Read()
    {
        _bad = !row.Fits(columns.Width, problems);
        var controller = Controller();
        var id = Needed(StationColumns.Station, "the number of the valve or head group on its controller");
        if (id.Length > 0 && !Names.IsId(id))
        {
            Wrong(StationColumns.Station, $"{Wording.Quote(id)} cannot be a station", "use letters, digits, - and _, without blanks");
        }

        var area = Area();
        var flow = Measured(StationColumns.Flow, FlowLPerMin);
        var ground = Measured(StationColumns.Ground, GroundM2);
        var rate = Rate(flow, ground, area);
        var minutes = controller is null ? [] : Minutes(controller);
        var exposure = Exposure(area);
        var gauge = Gauge(area);
        var known = RateKnown();
        var uniformity = Measured(StationColumns.Uniformity, UniformityPercent);
        if (_bad || controller is null || area is null || rate is null)
        {
            return null;
        }

        return new Station
        {
            Key = new(controller.Id, id),
            Name = columns.Cell(row, StationColumns.Name),
            Area = area.Area,
            BaseMinutes = minutes,
            Rate = rate.Value,
            RateKnown = known,
            DistributionUniformity = uniformity / 100,
            FlowLPerMin = flow,
            GroundM2 = ground,
            Exposure = exposure,
            Gauge = gauge,
            Note = columns.Cell(row, StationColumns.Note),
        };
    }

    private Controller? Controller()
    {
        var id = Needed(StationColumns.Controller, "the id of its controller in site.yaml");
        if (id.Length == 0)
        {
            return null;
        }

        string[] known = [.. draft.Site.Controllers.Select(c => c.Id)];
        if (Names.Find(known, id) is { } name)
        {
            return draft.Site.ControllerOf(name)!;
        }

        Wrong(StationColumns.Controller, $"there is no controller {Wording.Quote(id)} in site.yaml", Wording.DidYouMean(id, known, "controllers"));
        return null;
    }

    private AreaDraft? Area()
    {
        var name = Needed(StationColumns.Area, "an area of site.yaml");
        if (name.Length == 0)
        {
            return null;
        }

        string[] known = [.. draft.Areas.Select(a => a.Area.Name)];
        if (Names.Find(known, name) is { } found)
        {
            return draft.Areas.First(a => string.Equals(a.Area.Name, found, StringComparison.Ordinal));
        }

        Wrong(StationColumns.Area, $"there is no area {Wording.Quote(name)} in site.yaml", Wording.DidYouMean(name, known, "areas"));
        return null;
    }

    private Dictionary<string, double> Minutes(Controller controller)
    {
        var minutes = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var program in columns.Programs)
        {
            var column = StationColumns.Minutes + program;
            if (Measured(column, MostMinutes) is not ({ } value and > 0))
            {
                continue;
            }

            if (Names.Find(controller.Programs.Select(p => p.Id), program) is { } id)
            {
                minutes.TryAdd(id, value);
            }
            else
            {
                Wrong(column, $"controller {controller.Id} has no program {program}", $"its programs: {Wording.Listed([.. controller.Programs.Select(p => p.Id)])}; leave the cell empty");
            }
        }

        return minutes;
    }

    private ApplicationRate? Rate(double? flow, double? ground, AreaDraft? area)
    {
        var given = Measured(StationColumns.Rate, AreaSection.RateMmPerHour);
        if (given is { } mmPerHour)
        {
            CompareWithFlow(mmPerHour, flow, ground);
            return new(mmPerHour);
        }

        if (columns.Cell(row, StationColumns.Rate).Length > 0)
        {
            return null;
        }

        if (flow is { } litresPerMin && ground is { } squareMetres)
        {
            var rate = ApplicationRate.FromFlow(litresPerMin, squareMetres);
            if (!AreaSection.RateMmPerHour.Holds(rate.MmPerHour))
            {
                Wrong(StationColumns.Flow, $"flow and area watered give a precipitation rate of {Wording.Number(rate.MmPerHour)} mm/h", "it lies above 0 and at most 500 mm/h; look at both and their units");
            }

            return rate;
        }

        if (area?.RateMmPerHour is { } usual)
        {
            return new(usual);
        }

        if (area is not null && !_bad)
        {
            Wrong(StationColumns.Rate, "the precipitation rate is not known", "give it, or flow and area watered, or a precipitation_rate to its area in site.yaml");
        }

        return null;
    }

    /// <summary>Rates that differ by half are a slip of a digit or a unit, rarely of a catalogue.</summary>
    private void CompareWithFlow(double mmPerHour, double? flow, double? ground)
    {
        if (flow is not { } litresPerMin || ground is not { } squareMetres)
        {
            return;
        }

        var fromFlow = ApplicationRate.FromFlow(litresPerMin, squareMetres).MmPerHour;
        if ((fromFlow > 1.5 * mmPerHour || mmPerHour > 1.5 * fromFlow) && columns.UnitOf(StationColumns.Rate) is { } unit)
        {
            problems.Warn(
                row.Line,
                columns.Place(StationColumns.Rate),
                $"the rate is given as {Shown(mmPerHour, unit)}, but flow and area watered make {Shown(fromFlow, unit)}",
                "the given rate is used; look at all three");
        }
    }

    private double Exposure(AreaDraft? area)
    {
        var text = columns.Cell(row, StationColumns.Exposure);
        return text.Length == 0 ? area?.Exposure ?? 1 : Number(StationColumns.Exposure, text, null, AreaSection.Exposure) ?? 1;
    }

    private string Gauge(AreaDraft? area)
    {
        string[] known = [.. draft.Site.Weather.Gauges.Select(g => g.Id)];
        var text = columns.Cell(row, StationColumns.Gauge);
        if (text.Length == 0)
        {
            return area?.Area.Gauge ?? known.FirstOrDefault("");
        }

        if (Names.Find(known, text) is { } id)
        {
            return id;
        }

        Wrong(StationColumns.Gauge, $"there is no gauge {Wording.Quote(text)} in site.yaml", Wording.DidYouMean(text, known, "gauges"));
        return "";
    }

    private RateKnown RateKnown()
    {
        var text = columns.Cell(row, StationColumns.RateKnown);
        if (RateKnownWord.Find(text) is { } known)
        {
            return known;
        }

        Wrong(StationColumns.RateKnown, $"{Wording.Quote(text)} is not known", "write measured, catalogue or assumed");
        return Core.Sites.RateKnown.Assumed;
    }

    /// <summary>A number in the unit of its header, in metric; null where the cell is empty or wrong.</summary>
    private double? Measured(string column, Limits limits)
    {
        var text = columns.Cell(row, column);
        return text.Length == 0 || columns.UnitOf(column) is not { } unit ? null : Number(column, text, unit, limits);
    }

    private double? Number(string column, string text, Unit? unit, Limits limits)
    {
        var number = MeasuredCell.Number(column, text, unit, limits, row.Line, columns.Place(column), problems);
        _bad |= number is null;
        return number;
    }

    private string Needed(string column, string what)
    {
        var text = columns.Cell(row, column);
        if (text.Length == 0)
        {
            Wrong(column, $"{column} is empty", $"write {what}");
        }

        return text;
    }

    private void Wrong(string column, string what, string hint)
    {
        _bad = true;
        problems.Error(row.Line, columns.Place(column), what, hint);
    }

    private static string Shown(double mmPerHour, Unit unit) =>
        FormattableString.Invariant($"{unit.FromMetric(mmPerHour):0.##} {unit.Symbol}");
}
