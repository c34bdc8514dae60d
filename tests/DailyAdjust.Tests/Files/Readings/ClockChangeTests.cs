using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>Files whose clock goes forward in spring and back in autumn, as loggers write them.</summary>
[Trait("Promise", "5")]
public sealed class ClockChangeTests
{
    // US: 8 March and 1 November 2026 at 02:00. EU: 29 March and 25 October 2026 at 01:00 UTC. Source: the IANA time-zone data on the machine.
    public static TheoryData<string, string, int, StampMeaning, bool, bool> Changes()
    {
        var data = new TheoryData<string, string, int, StampMeaning, bool, bool>();
        foreach (var (zone, date) in new[]
        {
            ("America/Chicago", "2026-03-08"), ("America/Chicago", "2026-11-01"), ("Europe/Berlin", "2026-03-29"),
            ("Europe/Berlin", "2026-10-25"), ("Australia/Sydney", "2026-04-05"), ("Australia/Sydney", "2026-10-04"), ("Australia/Lord_Howe", "2026-04-05"),
        })
        {
            foreach (var minutes in new[] { 1, 10, 15, 30, 60 })
            {
                foreach (var newestFirst in new[] { false, true })
                {
                    data.Add(zone, date, minutes, StampMeaning.Start, false, newestFirst);
                    data.Add(zone, date, minutes, StampMeaning.End, false, newestFirst);

                    // An hour that half an hour's change cuts in two cannot be counted on from its beginning without doubt.
                    if (minutes < 60 || !zone.EndsWith("Howe", StringComparison.Ordinal))
                    {
                        data.Add(zone, date, minutes, StampMeaning.End, true, newestFirst);
                    }
                }
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Changes))]
    public void EveryIntervalOfTheNightIsReadOnceAndInItsPlace(string zone, string date, int minutes, StampMeaning stamp, bool countedOn, bool newestFirst)
    {
        var clock = StationFile.Clock(zone);
        var night = DateOnly.Parse(date, CultureInfo.InvariantCulture);
        var begins = Begins(clock.DayStart(night).AddHours(-6), clock.DayEnd(night).AddHours(6), minutes);

        var result = StationFile.Read(Lines(begins, clock, minutes, stamp, countedOn, newestFirst), Source(minutes, stamp), clock);

        Assert.Equal((begins.Count, 0, 0), result.Counts);
        Assert.Empty(result.Report.Problems);
        Assert.Equal(begins, result.Readings.Select(r => r.Begin));
        Assert.Equal(Enumerable.Range(0, begins.Count).Select(i => i / 10.0), result.Readings.Select(r => r.RainMm));
    }

    [Theory]
    [InlineData("America/Chicago", "2026-11-01T05:00Z", 10, StampMeaning.End, false)]
    [InlineData("America/Chicago", "2026-11-01T06:30Z", 10, StampMeaning.End, false)]
    [InlineData("America/Chicago", "2026-11-01T06:30Z", 10, StampMeaning.Start, false)]
    [InlineData("America/Chicago", "2026-11-01T06:30Z", 10, StampMeaning.End, true)]
    [InlineData("America/Chicago", "2026-11-01T07:30Z", 10, StampMeaning.End, false)]
    [InlineData("America/Chicago", "2026-11-01T07:30Z", 10, StampMeaning.Start, false)]
    [InlineData("America/Chicago", "2026-11-01T06:00Z", 60, StampMeaning.End, false)]
    [InlineData("America/Chicago", "2026-11-01T07:00Z", 60, StampMeaning.Start, false)]
    [InlineData("Europe/Berlin", "2026-10-25T00:20Z", 10, StampMeaning.Start, true)]
    [InlineData("Europe/Berlin", "2026-10-25T01:20Z", 10, StampMeaning.End, true)]
    [InlineData("Europe/Berlin", "2026-10-25T01:00Z", 60, StampMeaning.Start, true)]
    public void AFileThatBeginsWithinTheRepeatedHourIsReadByWhatFollows(string zone, string first, int minutes, StampMeaning stamp, bool newestFirst)
    {
        var clock = StationFile.Clock(zone);
        var from = DateTimeOffset.Parse(first, CultureInfo.InvariantCulture).ToUniversalTime();
        var begins = Begins(from, from.AddHours(8), minutes);

        var result = StationFile.Read(Lines(begins, clock, minutes, stamp, false, newestFirst), Source(minutes, stamp), clock);

        Assert.Equal(begins, result.Readings.Select(r => r.Begin));
    }

    [Fact]
    public void AnHourThatRepeatsAndWasWrittenOnceIsTheFirst()
    {
        var result = StationFile.Read(StationFile.PlainHeader + """
            2026-11-01 00:00,5,1,0
            2026-11-01 01:00,5,1,0
            2026-11-01 02:00,5,1,0
            2026-11-01 03:00,5,1,0

            """);

        Assert.Equal([5, 6, 8, 9], result.Readings.Select(r => r.End.Hour));
    }

    [Fact]
    public void ARowWrittenTwiceInTheRepeatedHourIsNoSecondPass()
    {
        var rows = new[] { "00:50", "01:00", "01:10", "01:10", "01:20", "01:30", "01:40", "01:50", "01:00", "01:10", "01:20", "01:30", "01:40", "01:50", "02:00" };

        var result = StationFile.Read(StationFile.PlainHeader + string.Concat(rows.Select(r => $"2026-11-01 {r},5,1,0\n")), Source(10, StampMeaning.End) with { Columns = StationFile.Plain.Columns });

        Assert.Equal(15, result.Report.RowsRead);
        Assert.Equal(14, result.Readings.Count);
        Assert.All(result.Readings.Skip(1).Zip(result.Readings), pair => Assert.Equal(TimeSpan.FromMinutes(10), pair.First.Begin - pair.Second.Begin));
    }

    [Theory]
    [InlineData(StampMeaning.Start, "02:00")]
    [InlineData(StampMeaning.Start, "02:50")]
    [InlineData(StampMeaning.End, "02:10")]
    [InlineData(StampMeaning.End, "02:00")]
    public void ATimeThatTheClockSkippedIsSetAsideWithItsPlace(StampMeaning stamp, string never)
    {
        var text = StationFile.PlainHeader + $"2026-03-08 01:50,5,1,0\n2026-03-08 {never},99,1,9\n2026-03-08 03:00,6,1,0\n2026-03-08 03:10,6,1,0\n";

        var result = StationFile.Read(text, Source(10, stamp) with { Columns = StationFile.Plain.Columns });

        Assert.Equal((3, 1, 0), result.Counts);
        Assert.DoesNotContain(result.Readings, r => r.RainMm > 0);
        var problem = Assert.Single(result.Report.Problems);
        Assert.Equal((3, 1), (problem.Line, problem.Column));
        Assert.Contains($"2026-03-08 {never}", problem.What, StringComparison.Ordinal);
    }

    [Fact]
    public void TheEndOfTheLastHourBeforeTheChangeIsThree()
    {
        var result = StationFile.Read(StationFile.PlainHeader + "2026-03-08 01:00,5,1,0\n2026-03-08 03:00,6,1,0.2\n2026-03-08 04:00,6,1,0\n");

        Assert.Equal((3, 0, 0), result.Counts);
        Assert.Equal(new DateTimeOffset(2026, 3, 8, 7, 0, 0, TimeSpan.Zero), result.Readings[1].Begin);
        Assert.Equal(new DateTimeOffset(2026, 3, 8, 8, 0, 0, TimeSpan.Zero), result.Readings[1].End);
    }

    [Fact]
    public void ADayHasAsManyHoursAsTheClockGivesIt()
    {
        var daily = StationFile.Plain with
        {
            Interval = TimeSpan.FromDays(1),
            Time = new TimeColumn("Date", null, "d.M.yyyy", StampClock.Local, StampMeaning.End),
            Columns = new Dictionary<WeatherQuantity, MappedColumn> { [WeatherQuantity.SolarRadiation] = new("Rs", "W/m²"), [WeatherQuantity.Rain] = new("Rain (mm/day)", null) },
        };

        var result = StationFile.Read("Date;Rs;Rain (mm/day)\n8.3.2026;100;1\n9.3.2026;100;2\n1.11.2026;100;3\n", daily);

        Assert.Equal([23, 24, 25], result.Readings.Select(r => (r.End - r.Begin).TotalHours));
        Assert.Equal([8.28, 8.64, 9.0], result.Readings.Select(r => Math.Round(r.SolarRadiationMJPerM2, 12)));
        Assert.Equal([1, 2, 3], result.Readings.Select(r => r.RainMm));
    }

    private static WeatherSource Source(int minutes, StampMeaning stamp) => StationFile.Plain with
    {
        Interval = TimeSpan.FromMinutes(minutes),
        Time = StationFile.Plain.Time with { Stamp = stamp },
        Columns = new Dictionary<WeatherQuantity, MappedColumn> { [WeatherQuantity.Rain] = new("Rain (mm)", null) },
    };

    private static List<DateTimeOffset> Begins(DateTimeOffset from, DateTimeOffset until, int minutes)
    {
        var begins = new List<DateTimeOffset>();
        for (var begin = from; begin < until; begin = begin.AddMinutes(minutes))
        {
            begins.Add(begin);
        }

        return begins;
    }

    /// <summary>Each interval's number, in tenths, as its rain.</summary>
    private static string Lines(List<DateTimeOffset> begins, SiteClock clock, int minutes, StampMeaning stamp, bool countedOn, bool newestFirst)
    {
        var rows = begins.Select((begin, i) =>
        {
            var shown = stamp == StampMeaning.Start ? clock.ToLocal(begin).DateTime
                : countedOn ? clock.ToLocal(begin).DateTime.AddMinutes(minutes)
                : clock.ToLocal(begin.AddMinutes(minutes)).DateTime;
            return string.Create(CultureInfo.InvariantCulture, $"{shown:yyyy-MM-dd HH:mm},{i / 10.0}\n");
        }).ToList();
        if (newestFirst)
        {
            rows.Reverse();
        }

        return new StringBuilder("Time,Rain (mm)\n").AppendJoin("", rows).ToString();
    }
}
