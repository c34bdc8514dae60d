using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Sites;

/// <summary>What can only be seen when both files are read: programs without stations, hours set by mistake, stations in two programs.</summary>
internal static class StationChecks
{
    /// <summary>Base minutes from which a wrong hour digit is likelier than a long watering (common practice; no source).</summary>
    private const double LongMinutes = 60;

    public static void Run(SiteDraft draft, IReadOnlyList<StationDraft> stations, ProblemList yaml, ProblemList csv)
    {
        // Stations and columns that could not be read would give cause for reports without cause.
        if (!csv.HasErrors)
        {
            foreach (var draftStation in stations)
            {
                CheckMinutes(draftStation, csv);
            }

            CheckPrograms(draft, stations, yaml);
        }

        foreach (var controller in draft.Site.Controllers)
        {
            CheckAddresses(draft, controller, stations, yaml);
        }
    }

    private static void CheckMinutes(StationDraft draft, ProblemList csv)
    {
        var (station, line, columns) = draft;
        if (station.Area.ByHand && station.BaseMinutes.Count > 0)
        {
            csv.Error(line, columns.Place(StationColumns.Station), $"station {station.Key} has minutes in a program, but its area {station.Area.Name} is watered by hand", "empty its minutes, give it another area, or take by_hand out of site.yaml");
        }

        if (station.BaseMinutes.Count == 0 && !station.Area.ByHand)
        {
            csv.Warn(line, columns.Place(StationColumns.Station), $"station {station.Key} has no minutes in any program", "it is never watered but for the hose; give it minutes, or take it out");
        }

        foreach (var program in columns.Programs.Where(p => station.BaseMinutes.GetValueOrDefault(p) >= LongMinutes))
        {
            csv.Warn(
                line,
                columns.Place(StationColumns.Minutes + program),
                $"station {station.Key} runs {Wording.Number(station.BaseMinutes[program])} min in {program}",
                "an hour set by mistake on the dial looks like this");
        }

        if (station.BaseMinutes.Count > 1)
        {
            csv.Warn(
                line,
                columns.Place(StationColumns.Station),
                $"station {station.Key} has minutes in {Wording.OneOf([.. columns.Programs.Where(station.BaseMinutes.ContainsKey)]).Replace(" or ", " and ", StringComparison.Ordinal)}",
                "it runs in each of them");
        }
    }

    private static void CheckPrograms(SiteDraft draft, IReadOnlyList<StationDraft> stations, ProblemList yaml)
    {
        foreach (var controller in draft.Site.Controllers)
        {
            foreach (var program in controller.Programs)
            {
                var key = new ProgramKey(controller.Id, program.Id);
                var runs = stations.Any(s => string.Equals(s.Station.Key.Controller, controller.Id, StringComparison.Ordinal) && s.Station.BaseMinutes.ContainsKey(program.Id));
                if (!runs && draft.ProgramsAt.TryGetValue(key, out var at))
                {
                    yaml.Error(at.Line, at.Column, $"program {key} has no station with minutes", $"write minutes into the column \"{StationColumns.Minutes}{program.Id}\" of stations.csv, or take the program out");
                }
            }
        }
    }

    /// <summary>C1/2 would mean a program in one line of the logbook and a station in another.</summary>
    private static void CheckAddresses(SiteDraft draft, Controller controller, IReadOnlyList<StationDraft> stations, ProblemList yaml)
    {
        foreach (var program in controller.Programs.Where(p => stations.Any(s =>
            string.Equals(s.Station.Key.Controller, controller.Id, StringComparison.Ordinal) && string.Equals(s.Station.Key.Station, p.Id, StringComparison.OrdinalIgnoreCase))))
        {
            var key = new ProgramKey(controller.Id, program.Id);
            if (draft.ProgramsAt.TryGetValue(key, out var at))
            {
                yaml.Warn(at.Line, at.Column, $"{key} is a program and a station", "in the logbook it means the program, but the station for minutes, hose and probe; another id is clearer");
            }
        }
    }
}
