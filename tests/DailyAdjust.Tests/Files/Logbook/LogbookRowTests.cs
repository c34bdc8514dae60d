using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Logbook;

/// <summary>Every kind of entry, every spelling of its value, and every reason to refuse a row.</summary>
public sealed class LogbookRowTests
{
    private const string Header = "time,kind,where,value,unit,until,by,note\n";

    private const string AllColumns = "time,kind,where,value,unit,until,by,note,instrument,rod length";

    private static readonly Site Site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    [Theory]
    [InlineData("2026-06-05 10:30,setting,C1/P2,90,%", 90.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,setting,c1/p2,90 %,", 90.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,Setting,C1/P2,90", 90.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,setting,C1/P2,off", 0.0, LogUnit.Percent)]
    [InlineData("2026-06-05T10:30,off,C1,", null, LogUnit.None)]
    [InlineData("2026-06-05 10:30:15,ran,C1/P2,yes", 100.0, LogUnit.Percent)]
    [InlineData("2026-06-05,ran,C1/3,no", 0.0, LogUnit.Percent)]
    [InlineData("2026-06-05 5:30,ran,C1,50 %", 50.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,run,C1/2,6,min", 6.0, LogUnit.Minutes)]
    [InlineData("2026-06-05 10:30,run,C1/2,90,s", 1.5, LogUnit.Minutes)]
    [InlineData("2026-06-05 10:30,run,C1/P2,60,%", 60.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,hose,C1/3,0.10,in", 2.54, LogUnit.Mm)]
    [InlineData("2026-06-05 10:30,hose,area:greens,100,gal", 378.5411784, LogUnit.Litres)]
    [InlineData("2026-06-05 10:30,syringe,area:greens,", null, LogUnit.None)]
    [InlineData("2026-06-05 10:30,syringe,C1/3,3,min", 3.0, LogUnit.Minutes)]
    [InlineData("2026-06-05 07:00,rain,gauge:yard,0.30,in", 7.62, LogUnit.Mm)]
    [InlineData("2026-06-05,rain,gauge:yard,0,mm", 0.0, LogUnit.Mm)]
    [InlineData("2026-06-05 10:30,probe,area:greens,0.14,m3/m3", 14.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,probe,C1/3,0.25,m³/m³", 25.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,spot,C1/3,0.25 m³/m³,", 25.0, LogUnit.Percent)]
    [InlineData("2026-06-05 10:30,meter,pump,2,acre-ft", 2466963.67507, LogUnit.Litres)]
    [InlineData("2026-06-05 10:30,pump,pump,400,gpm,2026-06-09", 1514.1647136, LogUnit.LitresPerMin)]
    [InlineData("2026-06-05 10:30,hold,area:fairways,,,2026-06-09,,drainage", null, LogUnit.None)]
    [InlineData("2026-06-05 10:30,grow-in,C1/P2,6 x 4 min,,2026-06-19", 4.0, LogUnit.Minutes)]
    [InlineData("2026-06-05 10:30,grow-in,C1/P2,6x4,min,2026-06-19", 4.0, LogUnit.Minutes)]
    [InlineData("2026-06-05 10:30,stage,site,none", null, LogUnit.None)]
    [InlineData("2026-06-05 10:30,season,C1,charging", null, LogUnit.None)]
    [InlineData("2026-06-05 10:30,visit,C2,,,2026-06-09", null, LogUnit.None)]
    [InlineData("2026-06-05 10:30,season,,closed", null, LogUnit.None)]
    [InlineData("2026-06-05,power,C1,,,2026-06-05 05:00", null, LogUnit.None)] // a bare date begins with its day
    [InlineData("2026-06-05,hold,C1,,,2026-06-05 18:00", null, LogUnit.None)]
    [InlineData("2026-06-05 10:30,note,area:rough,looks thirsty", null, LogUnit.None)]
    public void A_row_is_read(string row, double? value, LogUnit unit)
    {
        var reading = LogbookReader.Read("logbook.csv", Header + row, Site);
        Assert.Empty(reading.Problems);
        var entry = Assert.Single(reading.Entries);
        Assert.Equal(unit, entry.Unit);
        Assert.Equal(value is null, entry.Value is null);
        Assert.Equal(value ?? 0, entry.Value ?? 0, 1e-4);
    }

    [Theory]
    [InlineData("probe", "meter 2", "3 in", "meter 2", 0.0762)]
    [InlineData("spot", "", "12 cm", "", 0.12)]
    [InlineData("probe", "red one", "", "red one", null)]
    public void A_probe_keeps_its_moisture_meter_and_rods(string kind, string instrument, string rod, string kept, double? metres)
    {
        var entry = Assert.Single(LogbookReader.Read("l", $"{AllColumns}\n2026-06-05 10:30,{kind},C1/3,14,%,,,,{instrument},{rod}", Site).Entries);
        Assert.Equal(kept, entry.Instrument);
        Assert.Equal(metres is null, entry.RodLengthM is null);
        Assert.Equal(metres ?? 0, entry.RodLengthM ?? 0, 9);
    }

    [Theory]
    [InlineData("probe,C1/3,14,%", "3", "is not a length with its unit")]
    [InlineData("probe,C1/3,14,%", "3 gal", "is not a length with its unit")]
    [InlineData("probe,C1/3,14,%", "deep", "is not a length with its unit")]
    [InlineData("probe,C1/3,14,%", "0 in", "is out of range")]
    [InlineData("probe,C1/3,14,%", "3 m", "is out of range")]
    [InlineData("hose,C1/3,0.1,in", "3 in", "hose is not read with a moisture meter")]
    public void Rods_that_are_no_length_refuse_the_row(string entry, string rod, string what)
    {
        var reading = LogbookReader.Read("l", $"{AllColumns}\n2026-06-05 10:30,{entry},,,,,{rod}", Site);
        Assert.Empty(reading.Entries);
        var problem = Assert.Single(reading.Problems);
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Equal(10, problem.Column);
    }

    [Fact]
    public void A_round_names_its_sheet_and_what_was_not_done()
    {
        var entry = Assert.Single(LogbookReader.Read("l", Header + "2026-06-08 14:00,round,site,2026-06-08/2 done except C2/P1 c1", Site).Entries);
        Assert.Equal((new DateOnly(2026, 6, 8), 2), (entry.Sheet, entry.Issue));
        Assert.Equal([new Place(PlaceKind.Program, "C2", "P1"), new Place(PlaceKind.Controller, "C1", "")], entry.Except);

        var all = Assert.Single(LogbookReader.Read("l", Header + "2026-06-08 14:00,round,,2026-06-08 done", Site).Entries);
        Assert.Equal((null, 0), (all.Issue, all.Except.Count));
        Assert.Equal(PlaceKind.Site, all.Where.Kind);
    }

    [Fact]
    public void A_void_names_the_kind_and_a_season_its_state()
    {
        var reading = LogbookReader.Read("l", Header + "2026-06-05 10:30,void,C1/P2,Setting\n2026-11-01,season,C1,drained", Site);
        Assert.Equal(["setting", "drained"], reading.Entries.Select(e => e.Text), StringComparer.Ordinal);
        Assert.Equal("C1/P2", reading.Entries[0].Where.ToString());
    }

    [Theory]
    [InlineData("yesterday,setting,C1/P2,90,%", 1, "\"yesterday\" is not a time", "2026-06-05 10:30")]
    [InlineData("06/05/2026 10:30,setting,C1/P2,90,%", 1, "is not a time", "2026-06-05 10:30")]
    [InlineData(",setting,C1/P2,90,%", 1, "the time is empty", "2026-06-05 10:30")]
    [InlineData("2026-06-05,seting,C1/P2,90,%", 2, "\"seting\" is not a kind", "did you mean \"setting\"?")]
    [InlineData("2026-06-05,setting,C1/P9,90,%", 3, "there is no \"C1/P9\" on this site", "did you mean")]
    [InlineData("2026-06-05,setting,,90,%", 3, "the place is empty", "controller/program")]
    [InlineData("2026-06-05,rain,yard,0.3,in", 3, "there is no \"yard\"", "did you mean \"gauge:yard\"?")]
    [InlineData("2026-06-05,setting,C1/3,90,%", 3, "setting does not go with C1/3", "a program (C1/P2), a controller (C1) or site")]
    [InlineData("2026-06-05,setting,C1/P2,\"90,5\",%", 4, "\"90,5\" is not a number", "write a decimal point: 90.5")]
    [InlineData("2026-06-05,setting,C1/P2,,%", 4, "the value is empty", "units that fit")]
    [InlineData("2026-06-05,setting,C1/P2,1100,%", 4, "out of range", "from 0 to 1000 %")]
    [InlineData("2026-06-05,hose,C1/3,0.1,", 5, "the unit is empty", "mm, cm, in, ft, L")]
    [InlineData("2026-06-05,hose,C1/3,0.1,mph", 5, "\"mph\" is not a unit that fits here", "mm, cm, in, ft, L")]
    [InlineData("2026-06-05,hose,C1/3,0.1 in,mm", 5, "value says \"in\", unit says \"mm\"", "keep one")]
    [InlineData("2026-06-05,rain,gauge:yard,-0.1,in", 4, "-0.1 is out of range", "from 0 to")]
    [InlineData("2026-06-05,rain,gauge:yard,n/a,in", 4, "\"n/a\" is not a number", "plain number")]
    [InlineData("2026-06-05,run,C1/P2,6,min", 4, "minutes belong to a station", "C1/3")]
    [InlineData("2026-06-05,run,C1/3,60,%", 4, "a percentage belongs to a program", "C1/P2")]
    [InlineData("2026-06-05,hold,C1,,,,,leak", 6, "until is empty", "on which it ends")]
    [InlineData("2026-06-05,hold,C1,,,soon,,leak", 6, "\"soon\" is not a time", "through that date")]
    [InlineData("2026-06-05,hold,C1,,,2026-06-01,,leak", 6, "until 2026-06-01 lies before 2026-06-05", "wrong")]
    [InlineData("2026-06-05,season,site,shut", 4, "\"shut\" is not known", "open, closing, closed, drained or charging")]
    [InlineData("2026-06-05,void,site,nothing", 4, "\"nothing\" is not known", "the kind of the entry")]
    [InlineData("2026-06-05,off,C1/P2,50,%", 4, "off has no value", "leave it empty")]
    [InlineData("2026-06-05,off,C1/P2,,,2026-07-20", 6, "off has no end, but until 2026-07-20 stands there", "log pause (C2, 3 d)")]
    [InlineData("2026-06-05,setting,C1/P2,0.9,m³/m³", 5, "\"m³/m³\" is not a unit that fits here", "units that fit: %")]
    [InlineData("2026-06-05,ran,C1/P2,0.9,fraction", 5, "\"fraction\" is not a unit that fits here", "units that fit: %")]
    [InlineData("2026-06-05,probe,C1/3,14,mph", 5, "\"mph\" is not a unit that fits here", "units that fit: %, m³/m³")]
    [InlineData("2026-06-05,probe,C1/3,25,m³/m³", 4, "25 is out of range", "from 0 to 1 m³/m³")]
    [InlineData("2026-06-05,spot,C1/3,101,%", 4, "101 is out of range", "from 0 to 100 %")]
    [InlineData("2026-06-05,pump,C1,400,gpm", 3, "pump does not go with C1", "it goes with pump")]
    [InlineData("2026-06-05,round,site,done", 4, "does not say which round", "2026-06-08 done")]
    [InlineData("2026-06-05,round,site,2026-06-05 done except C9", 4, "except \"C9\"", "did you mean")]
    [InlineData("2026-06-05,setting,C1/P2,90,%,,,note,surplus", 9, "the row has 9 cells, the header 8", "quotation marks")]
    [InlineData("2026-06-05,note,site,6\" deep", 4, "a quotation mark stands inside a cell", "6\"\" deep")]
    public void A_bad_row_is_refused_with_its_reason_and_the_others_count(string row, int cell, string what, string hint)
    {
        var reading = LogbookReader.Read("logbook.csv", Header + "2026-06-04 09:00,setting,C1/P1,80,%\n" + row + (row.Contains('"', StringComparison.Ordinal) ? "" : "\n2026-06-07 09:00,setting,C1/P1,85,%"), Site);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal(("logbook.csv", 3, cell, Severity.Error), (problem.File, problem.Line, problem.Column, problem.Severity));
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains(hint, problem.Hint, StringComparison.Ordinal);
        Assert.DoesNotContain("?.", problem.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, reading.RowsRefused);
        Assert.Equal(reading.RowsRead, reading.Entries.Count);
        Assert.All(reading.Entries, e => Assert.Equal("C1/P1", e.Where.ToString()));
    }

    [Theory]
    [InlineData("setting,C1/8,90,%", "C1/8", true)] // a station, where no station goes
    [InlineData("setting,C11,90,%", "C1", false)]
    [InlineData("hose,C1/44,0.1,in", "C1/4", false)]
    [InlineData("checked,C1/P4,,", "C1/P", true)]
    public void Only_a_place_that_the_kind_takes_is_suggested(string row, string place, bool never)
    {
        var hint = Assert.Single(LogbookReader.Read("l", $"{Header}2026-06-05 10:30,{row}", Site).Problems).Hint;
        Assert.Equal(!never, hint.StartsWith($"did you mean \"{place}", StringComparison.Ordinal));
    }

    [Fact]
    public void A_setting_that_the_dial_cannot_show_counts_and_is_pointed_out()
    {
        var reading = LogbookReader.Read("l", Header + "2026-06-05 10:30,setting,C2/P1,95,%", Site);
        Assert.Equal(95, Assert.Single(reading.Entries).Value);
        Assert.Equal("l:2:4: 95 % is not on the dial of C2. it shows 10 to 150 % in steps of 10; the entry counts as it stands.", Assert.Single(reading.Problems).ToString());
        Assert.Equal(Severity.Warning, reading.Problems[0].Severity);
    }

    /// <summary>Greens of the example hold 1.0 in/ft of water, and root 6 in deep: 0.5 in.</summary>
    [Theory]
    [InlineData("water-in,area:greens,0.50,in,2026-06-06", null)]
    [InlineData("water-in,area:greens,0.51,in,2026-06-06", "0.51 in is more than the ground of C1/1 ever holds (0.5 in from dry to full)")]
    [InlineData("flush,area:greens,5,in,2026-06-06", null)]
    [InlineData("pause,C2,3,d", "C2 cannot pause by itself: site.yaml gives it no pause")]
    [InlineData("pause,C2/P1,3,d", "C2 cannot pause by itself")]
    [InlineData("probe,C1/3,0.25,%", "0.25 % of water by volume is less than ground with roots ever holds")]
    [InlineData("probe,C1/3,0,%", null)]
    [InlineData("probe,C1/3,1,%", null)]
    public void What_is_out_of_the_ordinary_counts_and_is_pointed_out(string row, string? doubt)
    {
        var reading = LogbookReader.Read("l", $"{Header}2026-06-05 10:30,{row}", Site);
        Assert.Single(reading.Entries);
        Assert.Equal(doubt is null ? 0 : 1, reading.Problems.Count);
        Assert.All(reading.Problems, p => Assert.Equal(Severity.Warning, p.Severity));
        Assert.All(reading.Problems, p => Assert.StartsWith(doubt!, p.What, StringComparison.Ordinal));
    }

    [Fact]
    public void A_box_that_can_pause_is_not_asked()
    {
        var site = Site with { Controllers = [.. Site.Controllers.Select(c => c with { PauseDays = string.Equals(c.Id, "C2", StringComparison.Ordinal) ? 5 : 0 })] };
        Assert.Empty(LogbookReader.Read("l", $"{Header}2026-06-05 10:30,pause,C2,3,d", site).Problems);
        var all = Assert.Single(LogbookReader.Read("l", $"{Header}2026-06-05 10:30,pause,site,3,d", site).Problems);
        Assert.DoesNotContain("C2", all.What, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_of_the_same_time_kind_and_place_are_told_apart_and_a_refused_one_keeps_its_number()
    {
        var reading = LogbookReader.Read("l", Header + """
            2026-06-05,rain,gauge:yard,0.1,in
            2026-06-05,rain,gauge:yard,0.x,in
            2026-06-05,rain,gauge:yard,0.3,in
            2026-06-06,rain,gauge:yard,0.3,in
            """, Site);
        Assert.Equal([0, 2, 0], reading.Entries.Select(e => e.Ordinal));
    }

    [Fact]
    public void A_spreadsheet_s_own_ways_are_read()
    {
        var reading = LogbookReader.Read("l", "\uFEFFTime;Kind;Where;Value;Unit;Note\r\n\"2026-06-05 10:30\";setting;\" C1/P2 \";90;%;\"two\r\nlines; and a \"\"quote\"\"\"\r\n;;;;;\r\n2026-06-06;off;C1/P2\r\n2026-06-07;of;C1/P2;;;\r\n", Site);
        Assert.Equal(2, reading.Entries.Count);
        Assert.Equal("two\r\nlines; and a \"quote\"", reading.Entries[0].Note);
        Assert.Equal(6, Assert.Single(reading.Problems).Line);
    }

    [Theory]
    [InlineData("")]
    [InlineData("time,what\n2026-06-05,off\n")]
    public void A_file_that_is_no_logbook_gives_nothing_but_a_reason(string text)
    {
        var reading = LogbookReader.Read("l", text, Site);
        Assert.Empty(reading.Entries);
        Assert.NotEmpty(reading.Problems);
    }

    [Fact]
    public void One_line_from_the_command_line_is_read_alike()
    {
        var good = LogbookReader.Read(new LogLine { Time = "2026-06-05 10:30", Kind = "setting", Where = "C1/P2", Value = "90 %" }, Site);
        Assert.Equal(90, Assert.Single(good.Entries).Value);
        var bad = LogbookReader.Read(new LogLine { Time = "2026-06-05 10:30", Kind = "setting", Where = "C1/P2", Value = "ninety" }, Site);
        Assert.Empty(bad.Entries);
        Assert.Contains("\"ninety\" is not a number", Assert.Single(bad.Problems).What, StringComparison.Ordinal);
    }
}
