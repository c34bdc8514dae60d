using System.Text.Json;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Tables;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class StoredDaysTests
{
    public static ZoneDay Day { get; } = new()
    {
        Date = new DateOnly(2026, 7, 14),
        Station = new StationKey("A", "3"),
        Area = "greens",
        EtoMm = 5.284,
        K = 0.68,
        Ks = 1,
        EtcMm = 3.59312,
        RainMm = null,
        InterceptedMm = 0,
        RunoffMm = 0.25,
        IrrigationMm = 5.02923,
        HoseMm = 0,
        DrainageMm = -0.0,
        ProbeMm = -1.5,
        DepletionBeforeMm = 2,
        DepletionMm = 1234.56789,
        RawMm = 6.35,
        TawMm = 12.7,
    };

    private static WeatherDay Open { get; } = new()
    {
        Date = new DateOnly(2026, 7, 13),
        Station = "",
        EtoMm = null,
        Basis = EtoBasis.Open,
        Rain = [new GaugeDay("shop", null, [], RainBasis.Unknown, 0)],
    };

    [Fact]
    public void Balance_has_the_columns_of_the_contract_and_empty_for_unknown()
    {
        var lines = BalanceTable.Of([Day]).ToCsv().Split('\n');
        Assert.Equal("date,controller,station,area,eto_mm,k,ks,etc_mm,rain_mm,intercepted_mm,runoff_mm,irrigation_mm,hose_mm,drainage_mm,probe_mm,depletion_mm,raw_mm,taw_mm", lines[0]);
        Assert.Equal("2026-07-14,A,3,greens,5.2840,0.6800,1.0000,3.5931,,0.0000,0.2500,5.0292,0.0000,0.0000,-1.5000,1234.5679,6.3500,12.7000", lines[1]);
    }

    [Fact]
    public void Lines_that_are_printed_in_parts_are_the_tables()
    {
        ZoneDay[] days =
        [
            Day,
            Day with { Station = new StationKey("=A,1", "3 \"left\""), Area = " greens", HoseMm = 0.00005, TawMm = 1e12, DepletionMm = -0.00001, K = double.NaN },
            .. Enumerable.Range(0, 100).Select(i => Day with { RainMm = i / 3.0 }),
        ];
        var lines = new CsvLines();
        BalanceTable.AddLines([Day], lines);
        lines.Clear();
        BalanceTable.AddLines(days, lines);
        using var printed = new StringWriter();
        printed.Write(BalanceTable.Of([]).ToCsv());
        lines.WriteTo(printed);
        Assert.Equal(BalanceTable.Of(days).ToCsv(), printed.ToString());
    }

    [Fact]
    public void Weather_counts_what_was_set_aside_and_says_what_the_source_said()
    {
        var at = new DateTimeOffset(2026, 7, 13, 6, 0, 0, TimeSpan.Zero);
        var day = Open with
        {
            SetAside = [new("shop", at, "wind_speed 2.2 m/s", "unchanged for 14 h") { Check = "stuck", Values = 14 }, new("shop", at, "rain -1 mm", "outside 0 to 305 mm")],
            Marks = ["rain: trace counts as 0", "wind_speed: estimated by its source"],
        };
        Assert.EndsWith(",15,rain: trace counts as 0; wind_speed: estimated by its source", WeatherTable.Of([day]).ToCsv().Split('\n')[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Weather_shows_the_first_gauge_and_names_every_gauge_at_the_end()
    {
        var day = InventedMorning.Build().Freshness.RecentDays[^1];
        var lines = WeatherTable.Of([day, Open]).ToCsv().Split('\n');
        Assert.Equal("date,station,eto_mm,eto_basis,rain_mm,tmax_c,tmin_c,estimated,rain_by_gauge,set_aside,marks", lines[0]);
        Assert.Equal("2026-07-14,shop,4.4000,hourly,13.7160,29.4000,15.5000,,shop=13.7160;east=,0,", lines[1]);
        Assert.Equal("2026-07-13,,,open,,,,,shop=,0,", lines[2]);
    }

    [Fact]
    public void Json_writes_numbers_bare_and_unknown_as_null()
    {
        using var json = JsonDocument.Parse(BalanceTable.Of([Day]).ToJson());
        var row = json.RootElement[0];
        Assert.Equal("A", row.GetProperty("controller").GetString());
        Assert.Equal(-1.5, row.GetProperty("probe_mm").GetDouble());
        Assert.Equal(JsonValueKind.Null, row.GetProperty("rain_mm").ValueKind);
        Assert.Equal(BalanceTable.Columns, row.EnumerateObject().Select(p => p.Name));
    }

    [Fact]
    public void Plain_text_aligns_its_columns()
    {
        var lines = BalanceTable.Of([Day, Day with { DepletionMm = 2 }]).ToText().TrimEnd('\n').Split('\n');
        Assert.Equal(3, lines.Length);
        Assert.Equal(lines[1].Length, lines[2].Length);
        Assert.Equal(lines[0].IndexOf("depletion_mm", StringComparison.Ordinal) + "depletion_mm".Length, lines[2].IndexOf(" 2.0000", StringComparison.Ordinal) + " 2.0000".Length);
    }

    [Trait("Promise", "11")]
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-2", "'-2")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("a=1", "a=1")]
    [InlineData("a,\"b\"", "\"a,\"\"b\"\"\"")]
    [InlineData("two\nlines", "\"two\nlines\"")]
    public void A_text_cell_cannot_become_a_formula_or_break_its_row(string text, string written) =>
        Assert.Equal("x\n" + written + "\n", new Table(["x"], [[Cell.Text(text)]]).ToCsv());

    [Fact]
    public void A_negative_number_stays_a_number() => Assert.Equal("x\n-1.5000\n", new Table(["x"], [[Cell.Fixed(-1.5, 4)]]).ToCsv());

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_not_a_number_is_unknown(double value) => Assert.Equal("", Cell.Fixed(value, 4).Written);
}
