using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Guess;

namespace DailyAdjust.Service.Setup;

/// <summary>Writes the commented site.yaml of a new site.</summary>
internal static class SiteYamlText
{
    /// <summary>Stands there until somebody has a file.</summary>
    private const string Unknown = """
            - id: station
              files: "station-*.csv"      # names of its files in inbox/; * stands for anything
              format: csv
              # clock: local (with summer time) | standard | utc; stamp: does the time stand at the end or the start of its interval?
              time: { column: "Time", pattern: "yyyy-MM-dd HH:mm", clock: local, stamp: end }
              interval: 1 h
              decimal: point
              missing: ["--", "---", "NA"]   # what the station writes where it has no value; an empty cell always is one
              wind_height: 2 m            # of the anemometer above ground
              columns:                    # quantity: header of its column, with the unit in brackets
                air_temperature: "Temp (°F)"
                relative_humidity: "RH (%)"
                wind_speed: "Wind (mph)"
                solar_radiation: "Solar (W/m²)"
                rain: "Rain (in)"

        """;

    public static string Of(SiteAnswers answers)
    {
        var us = answers.Units == UnitSystem.Us;
        var text = new StringBuilder();
        Site(text, answers, us);
        Weather(text, answers.Weather?.Guess);
        SoilsAndAreas(text, answers, us);
        Controllers(text, answers);
        return text.ToString();
    }

    private static void Site(StringBuilder text, SiteAnswers answers, bool us) => text.Append(CultureInfo.InvariantCulture, $"""
        # The site description; stations.csv beside it holds one row per station.
        # Every number with a dimension carries its unit, and a key that the program does not know is an error.
        # `dailyadjust check` tells what is wrong, in which line, and what would help. A change holds from the next day on.

        site:
          name: {Quoted(answers.Name)}
          latitude: {answers.LatitudeDeg}
          longitude: {answers.LongitudeDeg}
          elevation: {answers.Elevation} {(us ? "ft" : "m")}
          time_zone: {answers.TimeZone}
          units: {(us ? "us" : "metric")}
          start: {answers.Start:yyyy-MM-dd}
          start_soil: assumed         # full (soaked the day before) | allowable (dry as it may be) | assumed (halfway)

        report:
          at: "05:00"                 # the sheet lies ready
          round_done_by: "13:00"      # the boxes have been walked; later starts run at the new settings
          # first_play: "07:00"       # after a night that failed: what is run by hand is done by then
          satisfy: 80 %               # share of the ground that a percentage must suit; the rest is for the hose
          skip_below: 25 %            # less than this is not worth running if the turf can wait
          worth: 5 %                  # of allowable depletion: a smaller gain is not worth the walk
          off_with_note: ask          # a program that is off with a note of why stays off until somebody says that this is mended or over
          weather_max_age: 2 d        # older weather gives no advice

        # window: {"{"} opens: "20:00", closes: "06:30" {"}"}   # when irrigation may run
        # pump: {"{"} capacity: {(us ? "850 gpm" : "3200 L/min")} {"}"}              # what all controllers together may ask
        # water: {"{"} allotment: {(us ? "95 acre-ft" : "120000 m3")}, permit: {"{"} day: {(us ? "500000 gal" : "1900 m3")}, rate: {(us ? "850 gpm" : "3200 L/min")} {"}"} {"}"}   # what the place may take; `dailyadjust summary` holds the water used against it
        # cautions: {"{"} cold: {"{"} below: {(us ? "40 °F" : "4.4 °C")}, hold: false {"}"}, wind: {"{"} above: {(us ? "10 mph" : "4.5 m/s")}, hold: false {"}"} {"}"}   # told every such night; hold: true stops its starts
        # restrictions:               # local rules: days and hours on which nothing may start, or the most that may run
        #   - {"{"} name: "no watering by day", hours: {"{"} from: "09:00", until: "18:00" {"}"} {"}"}
        # stages:                     # of the drought plan; `dailyadjust log stage "stage 1"` puts one in force
        #   - {"{"} name: stage 1, days: [sat, sun], percent: 80 %, cut_order: [rough] {"}"}

        """);

    private static void Weather(StringBuilder text, WeatherGuess? guess)
    {
        text.Append("\nweather:\n  stations:                   # in order of preference\n");
        text.Append(guess is null
            ? "    # No weather file was at hand: put in your file's own names, then drop the file into inbox/.\n"
            : "    # Read from your file: look at the lines that say check, and whether every column is the right one.\n");
        var hasRain = true;
        if (guess?.Source is { } source)
        {
            hasRain = source.Columns.ContainsKey(WeatherQuantity.Rain);
            text.Append(GuessYaml.Station(guess with { Source = source with { Id = "station" } }, "    "));
        }
        else
        {
            text.Append(Unknown);
        }

        text.Append("  gauges:                     # the first is used where none is named\n");
        text.Append(hasRain ? "    - { id: station, station: station }\n" : "    - { id: hand, by_hand: true }   # the file has no rain: a person reads a gauge\n");
    }

    private static void SoilsAndAreas(StringBuilder text, SiteAnswers answers, bool us)
    {
        var areas = answers.Controllers.SelectMany(c => c.Programs).SelectMany(p => p.Stations)
            .Select(s => s.Area).Distinct(StringComparer.Ordinal).ToList();
        var soils = areas.Select(a => TurfPreset.Of(a).Soil).ToHashSet(StringComparer.Ordinal);
        text.Append("\n# Soils, roots and coefficients below are common practice: put in your own where you know them.\nsoils:\n");
        foreach (var soil in SoilPreset.All.Where(s => soils.Contains(s.Name)))
        {
            text.Append(CultureInfo.InvariantCulture, $"  {soil.Name}: {(us ? soil.Us : soil.Metric)}\n");
        }

        text.Append("\nareas:\n");
        var kc = string.Join(", ", Enumerable.Repeat(answers.WarmSeasonGrass ? "0.60" : "0.80", 12));
        foreach (var area in areas)
        {
            var preset = TurfPreset.Of(area);
            text.Append(CultureInfo.InvariantCulture, $"""
                  {area}:
                    grass: {(answers.WarmSeasonGrass ? "warm_season" : "cool_season")}
                    kc: [{kc}]   # share of reference ET, January to December
                    root_depth: {(us ? $"{preset.RootDepthIn} in" : $"{preset.RootDepthCm} cm")}
                    soil: {preset.Soil}
                    allowable_depletion: {preset.AllowableDepletion} %
                    distribution_uniformity: {preset.DistributionUniformity} %   # lower quarter, from catch cups (dailyadjust audit)

                """);
            foreach (var line in preset.More)
            {
                text.Append(CultureInfo.InvariantCulture, $"    {line}\n");
            }
        }
    }

    private static void Controllers(StringBuilder text, SiteAnswers answers)
    {
        text.Append("\n# not_together:               # stations of which no two may run at the same time\n#   - { name: north lateral, stations: [C1/3, C2/1] }\n");
        text.Append("\ncontrollers:                  # route: the order in which they are walked\n");
        foreach (var (controller, route) in answers.Controllers.Select((c, i) => (c, i + 1)))
        {
            text.Append(CultureInfo.InvariantCulture, $"""
                  - id: {controller.Id}
                    place: {Quoted(controller.Place)}
                    route: {route}
                    percent: {"{"} applies: program, min: 0 %, max: 200 %, step: 5 % {"}"}   # what its dial offers
                    minutes: {"{"} step: 1 min, rounding: nearest {"}"}
                    overlap: together           # or stack: a second program waits for the first
                    station_gap: 0 s
                    # pause: 7 d                # if the box can pause by itself: the most days
                    # rain_switch: {"{"} at: {(answers.Units == UnitSystem.Us ? "0.25 in" : "6 mm")}, dry_after: 24 h {"}"}   # if one is wired to it
                    programs:

                """);
            foreach (var program in controller.Programs)
            {
                var starts = string.Join(", ", program.Starts.Select(Quoted));
                text.Append(CultureInfo.InvariantCulture,
                    $"      - {{ id: {program.Id}, name: {Quoted(program.Name)}, starts: [{starts}], days: {program.Days}, visit: daily }}\n");
            }
        }
    }

    private static string Quoted(string text) =>
        "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
