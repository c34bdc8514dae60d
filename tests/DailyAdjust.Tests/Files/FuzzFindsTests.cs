using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Guess;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Courses;
using DailyAdjust.Tests.Files.Formats;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files;

/// <summary>What tests/DailyAdjust.Fuzz has found, cut down to what it is about.</summary>
[Trait("Promise", "10")]
public sealed class FuzzFindsTests
{
    [Theory]
    [InlineData("site: a\rb: \u0001", 2, 4)]
    [InlineData("site: a\r\nb: \u0001", 2, 4)]
    [InlineData("site: a\nb: \u0001", 2, 4)]
    [InlineData("site: { name: a", 1, 16)]
    [InlineData("site:\n  - [a, b]\n  name:", 3, 3)]
    public void WhatIsWrongWithADescriptionStandsInALineOfIt(string yaml, int line, int column)
    {
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv);

        Assert.Equal((line, column), (reading.Problems[0].Line, reading.Problems[0].Column));
    }

    /// <summary>The parser of JSON counts bytes; ° has two.</summary>
    [Fact]
    public void WhereAForecastIsCutIsCountedInCharacters()
    {
        var text = "{ \"properties\": {\n \"gridId\": \"°°°°\", x";

        var problem = Assert.Single(FormatFile.Read(GoodFiles.Gridpoint, Encoding.UTF8.GetBytes(text)).Report.Problems);

        Assert.Equal((2, text.Split('\n')[1].Length), (problem.Line, problem.Column));
    }

    [Theory]
    [InlineData("2982")]
    [InlineData("1749")]
    public void AForecastIsOfNoOtherCentury(string year)
    {
        var text = GoodFiles.GridpointText.Replace("2026-06-08T09:00:00", year + "-06-08T09:00:00", StringComparison.Ordinal);

        var read = FormatFile.Read(GoodFiles.Gridpoint, Encoding.UTF8.GetBytes(text));

        Assert.Equal(2, read.Report.RowsRefused);
        Assert.All(read.Readings, r => Assert.Equal(2026, r.Begin.Year));
    }

    /// <summary>The largest number there is, in inches, is no number of millimetres.</summary>
    [Theory]
    [InlineData("1e308")]
    [InlineData("-1e308")]
    [InlineData("1000000000001")]
    public void WhatNothingMeasuresIsNoNumber(string rain)
    {
        var source = StationFile.Plain with
        {
            Columns = new Dictionary<WeatherQuantity, MappedColumn> { [WeatherQuantity.AirTemperature] = new("Temp (°C)", null), [WeatherQuantity.Rain] = new("Rain (in)", null) },
        };

        var read = StationFile.Read($"Time,Temp (°C),Rain (in)\n2026-06-01 01:00,20.0,{rain}\n", source);

        Assert.Equal((0, 1, 0), read.Counts);
        Assert.Equal((20.0, double.NaN), (Assert.Single(read.Readings).AirTemperatureC, read.Readings[0].RainMm));
        Assert.Equal($"Rain (in): \"{rain}\" is not a number; the value is set aside", Assert.Single(read.Report.Problems).What);
    }

    [Fact]
    public void AForecastOfWhatNothingMeasuresCountsAsMissing()
    {
        var read = FormatFile.Read(GoodFiles.Gridpoint, Encoding.UTF8.GetBytes(GoodFiles.GridpointText.Replace("14.5", "1e300", StringComparison.Ordinal)));

        Assert.Equal(1, read.Report.RowsSetAside);
        Assert.Contains("a number beyond all that is measured", Assert.Single(read.Report.Problems).What, StringComparison.Ordinal);
    }

    /// <summary>Its cells cannot be told apart: the row has none.</summary>
    [Fact]
    public void ARowThatIsQuotedWronglyIsToldAtItsFirstCell()
    {
        var year = GoodFiles.ByLines.Single(f => f.Name is "ghcn by year");
        var gsod = GoodFiles.ByLines.Single(f => f.Name is "gsod");
        var epw = GoodFiles.ByLines.Single(f => f.Name is "epw");
        Assert.Equal((2, 1), At(year.Read(Text([.. year.Rows.Take(1), "a\"b\"," + year.Rows[1], .. year.Rows.Skip(1)]))));
        Assert.Equal((2, 1), At(gsod.Read(Text([.. gsod.Header, "a\"b\"," + gsod.Rows[1], .. gsod.Rows.Skip(1)]))));
        Assert.Equal((9, 1), At(epw.Read(Text([.. epw.Header, "a\"b\"," + epw.Rows[1], .. epw.Rows.Skip(1)]))));

        static byte[] Text(IEnumerable<string> lines) => Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n");

        static (int Line, int Column) At(Result read) => (read.Report.Problems[0].Line, read.Report.Problems[0].Column);
    }

    /// <summary>Cells are read without blanks at their ends, and none longer than 100 characters.</summary>
    [Theory]
    [InlineData(" yyyy-MM-dd HH:mm")]
    [InlineData("yyyy-MM-dd HH:mm ")]
    [InlineData("yyyy-MM-dd HH:mm'xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx'")]
    public void APatternThatNoCellFitsIsRefused(string pattern) => Assert.NotNull(StampPattern.Fault(pattern, daily: false));

    [Fact]
    public void ALongPatternIsCutWhereItIsTold() => Assert.InRange(StampPattern.Fault(new string('y', 10_000), daily: false)!.Length, 1, 300);

    /// <summary>It was looked at from each of its characters to its end: 60 KB took 16 s and 8 GB.</summary>
    [Fact]
    public void AHeaderOfAnyLengthIsGuessedAtInOneGo()
    {
        var text = "Time,Temp " + string.Concat(Enumerable.Repeat("x !", 20_000)) + ",Rain (mm)\n" + string.Concat(Enumerable.Range(1, 20).Select(i => $"2026-06-01 {i:00}:00,{i}.5,0.1\n"));
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        var before = GC.GetAllocatedBytesForCurrentThread();

        var guess = WeatherGuess.Of("yard.csv", stream);

        Assert.NotNull(guess.Source);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200_000_000);
    }

    /// <summary>Whether each place of the course may stand there was asked of each row: 1,000 rows took 200 MB with 21 programs, and longer by the square of the stations.</summary>
    [Fact]
    public void RowsOfPlacesThatAreNotThereCostLittleEach()
    {
        const int Rows = 500;
        var files = CourseFiles.Of(new() { Stations = 300, From = new(2026, 6, 1), Through = new(2026, 6, 2) });
        var site = SiteReader.Read("site.yaml", files["site.yaml"], "stations.csv", files["stations.csv"]).Site!;
        var text = "time,kind,where,value,unit\n" + string.Concat(Enumerable.Repeat("2026-06-01 06:00,setting,B1/DD,90,%\n", Rows));
        var before = GC.GetAllocatedBytesForCurrentThread();

        var reading = LogbookReader.Read("logbook.csv", text, site);

        Assert.Equal(Rows, reading.RowsRefused);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 75_000_000);
    }

    /// <summary>What is there is told where a name is not known, not all of it where there is much.</summary>
    [Fact]
    public void LongNamesThatAreKnownAreCutWhereTheyAreTold()
    {
        var yaml = ExampleSiteFiles.SiteYaml.Replace("id: C2", "id: C2" + new string('x', 50_000), StringComparison.Ordinal);

        var problems = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv).Problems;

        Assert.Contains(problems, p => p.What.StartsWith("there is no controller", StringComparison.Ordinal));
        Assert.All(problems, p => Assert.InRange(p.ToString().Length, 1, 1_000));
    }

    [Fact]
    public void ALongEndIsCutWhereItIsTold()
    {
        var site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

        var reading = LogbookReader.Read(new LogLine { Time = "2026-06-05 10:30", Kind = "setting", Where = "C1/P2", Value = "90", Unit = "%", Until = new string('x', 5_000) }, site);

        Assert.Equal(Severity.Error, Assert.Single(reading.Problems).Severity);
        Assert.InRange(reading.Problems[0].ToString().Length, 1, 500);
    }

    /// <summary>Of many boxes at one place of the route the first are named, and the others counted.</summary>
    [Fact]
    public void ManyBoxesAtOnePlaceAreNotAllNamed()
    {
        var box = "  - { id: X, route: 7, programs: [{ id: P1, starts: [\"22:00\"], days: daily }] }\n";
        var yaml = ExampleSiteFiles.SiteYaml.Replace("controllers:\n", "controllers:\n" + string.Concat(Enumerable.Repeat(box, 300)), StringComparison.Ordinal);

        var problems = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv).Problems;

        Assert.EndsWith(" and X and 260 more have the same place 7 on the route", Assert.Single(problems, p => p.What.Contains("same place", StringComparison.Ordinal)).What, StringComparison.Ordinal);
        Assert.All(problems, p => Assert.InRange(p.ToString().Length, 1, 1_000));
    }

    /// <summary>What is known is listed as far as a person reads it.</summary>
    [Fact]
    public void LongNamesOfManyProgramsAreNotAllListed()
    {
        var programs = string.Concat(Enumerable.Range(10, 60).Select(i => $"      - {{ id: {new string('x', 55)}{i}, starts: [\"22:00\"], days: every day }}\n"));
        var yaml = ExampleSiteFiles.SiteYaml.Replace("      - { id: P2, name: Greens,", $"{programs}      - {{ id: P9, name: Greens,", StringComparison.Ordinal);

        var problems = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv).Problems;

        Assert.Contains(problems, p => p is { What: "controller C1 has no program P2" } && p.Hint.EndsWith(", ...; leave the cell empty", StringComparison.Ordinal));
        Assert.All(problems, p => Assert.InRange(p.ToString().Length, 1, 1_100));
    }

    /// <summary>A name is made plain once for a line, not once for every column that is looked for.</summary>
    [Fact]
    public void ManyCellsWithoutAHeaderAreLookedThroughOnce()
    {
        var bytes = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(string.Join(' ', Enumerable.Repeat("03047,20260601,2.622", 40)) + "\r\n", 20)));
        using var stream = new MemoryStream(bytes);
        var before = GC.GetAllocatedBytesForCurrentThread();

        WeatherGuess.Of("yard.csv", stream);

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 64_000_000 + (8_000L * bytes.Length));
    }

    [Theory]
    [InlineData("1")]
    [InlineData("1,")]
    public void ALongNumberIsCutWhereItIsTold(string digits)
    {
        var stations = ExampleSiteFiles.StationsCsv.Replace(",,32,,0.55,", $",,\"{string.Concat(Enumerable.Repeat(digits, 20_000))}1\",,0.55,", StringComparison.Ordinal);

        var problems = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", stations).Problems;

        Assert.NotEmpty(problems);
        Assert.All(problems, p => Assert.InRange(p.ToString().Length, 1, 500));
    }

    /// <summary>A share so small that half of it is none, and a curve on which no rain ever runs off, are slips of the pen.</summary>
    [Theory]
    [InlineData("allowable_depletion: 50 %", "allowable_depletion: 5e-324 %")]
    [InlineData("curve_number: 69", "curve_number: 0.06")]
    public void NumbersNextToNothingAreNone(string good, string bad)
    {
        Assert.Contains(good, ExampleSiteFiles.SiteYaml, StringComparison.Ordinal);

        var reading = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml.Replace(good, bad, StringComparison.Ordinal), "stations.csv", ExampleSiteFiles.StationsCsv);

        Assert.Null(reading.Site);
        Assert.NotEmpty(reading.Problems);
    }

    [Fact]
    public void ALongStationsCodeIsCutWhereItIsTold()
    {
        var good = GoodFiles.ByLines.Single(f => f.Name is "dwd");
        var text = string.Join('\n', [.. good.Header, .. good.Rows, good.Rows[^1].Replace(good.Rows[^1].Split(';')[0], new string('4', 20_000), StringComparison.Ordinal)]) + "\n";

        Assert.All(FormatFile.Read(good.Source!, Encoding.UTF8.GetBytes(text)).Report.Problems, p => Assert.InRange(p.ToString().Length, 1, 1_000));
    }
    /// <summary>A header of many long cells, a long unit below it, and a name that is spread over the line.</summary>
    [Fact]
    public void ALongHeaderIsCutWhereItIsTold()
    {
        var cells = string.Join(',', Enumerable.Range(1, 40).Select(i => $"{i:00}{new string('x', 200)}"));
        var spread = StationFile.PlainHeader.Replace("Temp (°C)", $"Temp{new string(' ', 20_000)}(grad)", StringComparison.Ordinal);
        var plain = new Dictionary<WeatherQuantity, MappedColumn>(StationFile.Plain.Columns) { [WeatherQuantity.AirTemperature] = new("Temp", null) };
        var named = new Dictionary<WeatherQuantity, MappedColumn>(StationFile.Plain.Columns) { [WeatherQuantity.AirTemperature] = new("Temp (grad)", null) };

        Told($"Time,{cells}\n", StationFile.Plain, "the header has no column \"Temp (°C)\"");
        Told($"Time,Temp,Wind (m/s),Rain (mm)\n,{new string('g', 20_000)},m/s,mm\n", StationFile.Plain with { UnitsBelow = true, Columns = plain }, "is not a unit that it can have");
        Told(spread, StationFile.Plain with { Columns = named }, "is not a unit that it can have");

        static void Told(string header, WeatherSource source, string what)
        {
            var problems = StationFile.Read(header + "2026-06-01 01:00,20.1,1.5,0.00\n", source).Report.Problems;
            Assert.Contains(problems, p => p.What.Contains(what, StringComparison.Ordinal));
            Assert.All(problems, p => Assert.InRange(p.ToString().Length, 1, 1_100));
        }
    }
    [Fact]
    public void RowsOfAnotherStationAreCountedWhereThereAreNoneOfOurs()
    {
        var good = GoodFiles.ByLines.Single(f => f.Name is "dwd");
        var text = string.Join('\n', [.. good.Header, .. good.Rows.Select(row => row.Replace("  44;", "2576;", StringComparison.Ordinal))]) + "\n";

        var report = FormatFile.Read(good.Source!, Encoding.UTF8.GetBytes(text)).Report;

        Assert.Equal("the file has no row of station 44; it has 12 of 2576", Assert.Single(report.Problems).What);
        Assert.Equal(good.Rows.Count, RowCounts.OfOthers(report));
    }
}
