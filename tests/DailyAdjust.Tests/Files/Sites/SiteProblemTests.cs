using DailyAdjust.Files;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>Every kind of mistake in site.yaml: where it stands, what is wrong, what to do. Each test changes one place of the example site.</summary>
public sealed class SiteProblemTests
{
    [Theory]
    // Keys.
    [InlineData("  route: 1", "  rout: 1", 76, 5, "\"controllers[1].rout\" is not a key that is known here", "did you mean \"route\"?")]
    [InlineData("pump: {", "pumps: {", 19, 1, "\"pumps\" is not a key", "did you mean \"pump\"?")]
    [InlineData("  units: us", "  units: us\n  units: metric", 9, 3, "\"units\" stands here a second time; the first is in line 8", "keep one")]
    [InlineData("  latitude: 44.21\n", "", 2, 1, "site.latitude is missing", "add \"latitude: 40.27\"")]
    [InlineData("soil: silt-loam", "", 56, 3, "areas.fairways.soil is missing", "add \"soil: loam\"")]
    [InlineData("  name: Tamarack Flats Municipal", "  name:", 3, 3, "site.name has no value", "give it one")]
    [InlineData("  start: 2026-06-01", "  start: ~", 9, 3, "site.start has no value", "give it one")]
    // Units.
    [InlineData("elevation: 1290 ft", "elevation: 1290", 6, 14, "site.elevation: \"1290\" has no unit", "put the unit behind the number; units that fit: m, cm, mm, km, ft, in, yd")]
    [InlineData("elevation: 1290 ft", "elevation: 1290 gpm", 6, 14, "\"gpm\" is not a unit of length", "units that fit: m, cm, mm, km, ft, in, yd")]
    [InlineData("elevation: 1290 ft", "elevation: 1,5 km", 6, 14, "\"1,5 km\" is not a number with a unit", "write a decimal point: 1.5")]
    [InlineData("satisfy: 80 %", "satisfy: 80", 14, 12, "report.satisfy: \"80\" has no unit", "units that fit: %")]
    [InlineData("\"Wind (mph)\"", "\"Wind (in)\"", 32, 21, "\"in\" is not a unit of speed", "mph")]
    [InlineData("\"Wind (mph)\"", "Wind", 32, 21, "the header \"Wind\" does not say its unit in brackets", "write { column: \"Wind\", unit: \"m/s\" }")]
    [InlineData("\"Wind (mph)\"", "{ column: Wind, unit: smoots/s }", 32, 43, "\"smoots/s\" is not a unit of speed", "m/s, km/h, mph")]
    // Ranges.
    [InlineData("latitude: 44.21", "latitude: 144.21", 4, 13, "site.latitude: 144.21 is out of range", "from -90 to 90")]
    [InlineData("skip_below: 25 %", "skip_below: -1 %", 15, 15, "out of range", "from 0 to 1000 %")]
    [InlineData("root_depth: 8 in", "root_depth: 8 m", 59, 17, "root_depth: 8 m is out of range", "from 0.01 to 3 m")]
    [InlineData("allowable_depletion: 45 %", "allowable_depletion: 100 %", 61, 26, "out of range", "at least 0.1 and below 100 %")]
    [InlineData("curve_number: 69", "curve_number: 0", 39, 82, "out of range", "from 1 to 100")]
    [InlineData("wind_height: 2 m", "wind_height: 120 m", 23, 20, "out of range", "from 0.1 to 100 m")]
    [InlineData("interval: 1 h", "interval: 7 min", 27, 7, "7 min does not divide the hour", "write 1, 5, 10")]
    [InlineData("max: 150 %", "max: 5 %", 88, 45, "max 5 % is not above min 10 %", "range that the dial can show")]
    [InlineData("max: 150 %, step: 10 %", "max: 150 %, step: 141 %", 88, 63, "a step of 141 % leads past the dial's end, from 10 to 150 %", "from one number to the next")]
    [InlineData("distribution_uniformity: 65 %", "efficiency: 5e-324 %", 63, 17, "out of range", "above 0 and at most 100 %")]
    // Words, times, dates.
    [InlineData("start_soil: full", "start_soil: wet", 10, 15, "\"wet\" is not known", "write full, allowable or assumed")]
    [InlineData("start: 2026-06-01", "start: 2026-06-31", 9, 10, "\"2026-06-31\" is not a date", "2026-06-01")]
    [InlineData("opens: \"20:00\"", "opens: \"25:00\"", 18, 18, "\"25:00\" is not a time of day", "\"05:00\"")]
    [InlineData("days: odd", "days: [wed, fry]", 93, 70, "\"fry\" is not a day of the week", "mon, tue")]
    [InlineData("visit: [mon, thu]", "visit: weekly", 94, 94, "\"weekly\" is not known", "daily, [mon, thu] or { day: 1 }")]
    [InlineData("time_zone: America/Chicago", "time_zone: America/Chikago", 7, 14, "\"America/Chikago\" is not a time zone", "did you mean \"America/Chicago\"?")]
    [InlineData("time_zone: America/Chicago", "time_zone: ../../etc/passwd", 7, 14, "is not a time zone", "IANA name")]
    [InlineData("pattern: \"yyyy-MM-dd HH:mm\"", "pattern: \"yyyy-MM-dd\"", 26, 29, "must have the hour", "yyyy-MM-dd HH:mm")]
    [InlineData("pattern: \"yyyy-MM-dd HH:mm\"", "pattern: s", 26, 29, "must have year", "yyyy-MM-dd HH:mm")]
    [InlineData("pattern: \"yyyy-MM-dd HH:mm\"", "pattern: \"yyyy-MM-dd HH:MM\"", 26, 29, "MM is the month", "yyyy-MM-dd HH:mm")]
    [InlineData("pattern: \"yyyy-MM-dd HH:mm\"", "pattern: \"MM/dd HH:mm\"", 26, 29, "must have year", "yyyy-MM-dd HH:mm")]
    [InlineData("at: \"05:00\"", "at: \"14:00\"", 12, 3, "the sheet of 14:00 would lie ready after the round is done by 13:00", "earlier")]
    [InlineData("starts: [\"03:30\", \"05:20\"]", "starts: [\"03:30\", \"03:30\"]", 94, 60, "03:30 stands there twice", "keep one")]
    // References.
    [InlineData("soil: silt-loam", "soil: silt-lome", 60, 11, "there is no soil \"silt-lome\"", "did you mean \"silt-loam\"?")]
    [InlineData("{ id: yard, station: yard }", "{ id: yard, station: barn }", 36, 28, "there is no weather station \"barn\"", "weather stations: yard")]
    [InlineData("{ id: yard, station: yard }", "{ id: yard }", 36, 7, "does not say whose rain it is", "by_hand: true")]
    [InlineData("- id: C2", "- id: C1", 85, 5, "controller \"C1\" stands there twice", "give each its own")]
    [InlineData("- id: C2", "- id: C 2", 85, 5, "\"C 2\" cannot be an id", "without blanks")]
    // Values of their own kind.
    [InlineData("kc: [0.61, ", "kc: [", 58, 9, "has 11 value(s) instead of 12", "January first")]
    [InlineData("kc: [0.61, 0.64, 0.75, 1.04, 0.95, 0.88, 0.94, 0.86, 0.74, 0.75, 0.69, 0.60]", "kc: uc-cold-season", 58, 9, "not a table that is known", "did you mean \"uc-cool-season\"?")]
    [InlineData("distribution_uniformity: 65 %", "distribution_uniformity: 65 %\n    efficiency: 70 %", 64, 5, "both efficiency and distribution_uniformity", "keep one")]
    [InlineData("site:\n", "site: [\n", 4, 11, "this is not YAML", "look at this line")]
    [InlineData("pump: { capacity: 850 gpm }", "pump: 850 gpm", 19, 7, "pump is not a map", "{ key: value")]
    // What a site never needs.
    [InlineData("name: Tamarack", "name: &a Tamarack", 3, 9, "anchors (&name) are not read", "quotation marks")]
    [InlineData("name: Tamarack Flats Municipal", "name: *a", 3, 9, "", "")]
    [InlineData("name: Tamarack", "name: !x Tamarack", 3, 9, "tags (!name) are not read", "quotation marks")]
    [InlineData("report:", "---\nreport:", 11, 1, "a second document begins here", "---")]
    public void A_mistake_is_named_where_it_stands(string good, string bad, int line, int column, string what, string hint)
    {
        Assert.Contains(good, ExampleSiteFiles.SiteYaml, StringComparison.Ordinal);
        var at = ExampleSiteFiles.SiteYaml.IndexOf(good, StringComparison.Ordinal);
        var reading = Read(ExampleSiteFiles.SiteYaml.Remove(at, good.Length).Insert(at, bad));

        Assert.Null(reading.Site);
        var errors = reading.Problems.Where(p => p.Severity == Severity.Error).ToList();
        Assert.True(
            errors.Exists(p => p is { File: "site.yaml" } && p.Line == line && p.Column == column
                && p.What.Contains(what, StringComparison.Ordinal) && p.Hint.Contains(hint, StringComparison.Ordinal)),
            string.Join('\n', errors));
    }

    [Theory]
    [InlineData("max: 150 %", "max: 150", "controllers[2].percent.max: \"150\" has no unit")]
    [InlineData("min: 10 %", "min: 300", "controllers[2].percent.min: \"300\" has no unit")]
    [InlineData("max: 150 %", "max: 5 %", "controllers[2].percent: max 5 % is not above min 10 %")]
    public void A_range_is_judged_only_where_both_of_its_ends_are_known(string good, string bad, string what) =>
        Assert.StartsWith(what, Assert.Single(Read(ExampleSiteFiles.SiteYaml.Replace(good, bad, StringComparison.Ordinal)).Problems, p => p.Severity == Severity.Error).What, StringComparison.Ordinal);

    [Fact]
    public void All_mistakes_are_told_at_once_in_the_order_of_the_file()
    {
        var reading = Read(ExampleSiteFiles.SiteYaml
            .Replace("latitude: 44.21", "latitude: north", StringComparison.Ordinal)
            .Replace("elevation: 1290 ft", "elevation: 1290", StringComparison.Ordinal)
            .Replace("  round_done_by: \"13:00\"", "  round_done: \"13:00\"", StringComparison.Ordinal)
            .Replace("root_depth: 6 in", "root_depth: 6 gal", StringComparison.Ordinal)
            .Replace("starts: [\"22:15\"]", "starts: []", StringComparison.Ordinal));

        Assert.Null(reading.Site);
        Assert.Equal(
            [(4, 13), (6, 14), (13, 3), (45, 17), (52, 17), (93, 47)],
            reading.Problems.Where(p => p.Severity == Severity.Error).Select(p => (p.Line, p.Column)));
    }

    private static SiteReading Read(string yaml) => SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv);
}
