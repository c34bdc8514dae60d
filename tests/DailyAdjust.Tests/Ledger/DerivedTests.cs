using CsCheck;
using DailyAdjust.Core.Weather;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Derived;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Ledger.Json;
using Xunit;
using static DailyAdjust.Tests.Ledger.Samples;

namespace DailyAdjust.Tests.Ledger;

public sealed class DerivedTests : IDisposable
{
    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public DerivedTests()
    {
        _ledger = _home.Write();
        for (var i = 1; i <= 3; i++)
        {
            _ledger.Files.Store($"{i}.csv", "yard", [(byte)i], LedgerFolder.Noon);
        }
    }

    [Fact]
    public void Reading_blocks_come_by_day_and_then_in_order_of_arrival()
    {
        _ledger.Readings.Put([Block(Day, 2, 2), Block(Day.AddDays(1), 1, 3), Block(Day, 1, 1), Block(Day, 3, 9) with { Source = "far" }]);
        Assert.Equal([1, 2, 3], Found(Day, Day.AddDays(1)));
        Assert.Equal([1, 2], Found(Day, Day));
        Assert.Equal([1, 3], Found(Day, Day.AddDays(1), upTo: 1));
        Assert.Equal((Day, Day.AddDays(1)), (_ledger.Readings.FirstDay("yard"), _ledger.Readings.LastDay("yard")));
        Assert.Null(_ledger.Readings.LastDay("nowhere"));
    }

    [Fact]
    public void A_block_read_again_takes_the_earlier_ones_place_and_a_file_can_be_forgotten()
    {
        _ledger.Readings.Put([Block(Day, 1, 1), Block(Day, 2, 2)]);
        _ledger.Readings.Put([Block(Day, 1, 7) with { MapSha = "m2" }]);
        Assert.Equal([7, 2], Found(Day, Day));
        Assert.Equal("m2", _ledger.Readings.Between("yard", Day, Day)[0].MapSha);
        _ledger.Files.SetRead(new FileRead(1, "m2", 1, 0, 0, ""));
        _ledger.Readings.Forget(1);
        Assert.Equal([2], Found(Day, Day));
        Assert.Null(_ledger.Files.ReadOf(1));
    }

    [Fact]
    public void Putting_a_weather_day_tells_whether_it_differs()
    {
        Assert.True(_ledger.Weather.Put(FullDay, "h1"));
        Assert.False(_ledger.Weather.Put(FullDay, "h2"));
        Assert.Equal("h2", _ledger.Weather.Get(Day)!.InputsHash);
        Assert.True(_ledger.Weather.Put(FullDay with { EtoMm = 5.123458 }, "h2"));
        Assert.Null(_ledger.Weather.Get(Day.AddDays(1)));
    }

    [Fact]
    public void A_weather_day_comes_back_bit_for_bit()
    {
        _ledger.Weather.Put(FullDay, "h");
        var back = _ledger.Weather.Get(Day)!.Day;
        Assert.Equal(BitConverter.DoubleToInt64Bits(-0.0), BitConverter.DoubleToInt64Bits(back.AirTemperatureMinC!.Value));
        Assert.Equal(FullDay.EtoMm, back.EtoMm);
        Assert.Equal(FullDay.Estimated, back.Estimated);
        Assert.Equal(FullDay.SetAside, back.SetAside);
        Assert.Equal(FullDay.Doubts, back.Doubts);
        Assert.Equal(FullDay.Marks, back.Marks);
        Assert.Equal(FullDay.StandIn, back.StandIn);
        Assert.Equal(FullDay.Stations, back.Stations);
        Assert.Equal(FullDay.Rain.Count, back.Rain.Count);
        for (var i = 0; i < back.Rain.Count; i++)
        {
            Assert.Equal(FullDay.Rain[i].Falls, back.Rain[i].Falls);
            Assert.Equal(FullDay.Rain[i] with { Falls = [] }, back.Rain[i] with { Falls = [] });
        }

        Assert.Equal(Bare(FullDay), Bare(back));
        var open = new WeatherDay { Date = Day, Station = "", EtoMm = null, Basis = EtoBasis.Open, Rain = [] };
        Assert.Equal(Bare(open), Bare(WeatherDayJson.Read(WeatherDayJson.Write(open))));
        static WeatherDay Bare(WeatherDay day) => day with { Estimated = [], Rain = [], SetAside = [], Doubts = [], Marks = [], Stations = [] };
    }

    [Fact]
    public void A_day_that_was_stored_before_checks_had_names_is_still_read()
    {
        const string Old = """
            {"date":"2026-06-08","station":"yard","basis":"hourly","estimated":[],"rain":[],
             "setAside":[{"station":"yard","begin":"2026-06-08T03:00:00+00:00","what":"air_temperature 88 °C","why":"outside -60 to 60 °C"}],"etoMm":5}
            """;
        var day = WeatherDayJson.Read(Old);
        Assert.Equal(5, day.EtoMm);
        Assert.Equal(("", 1, "air_temperature"), (day.SetAside[0].Check, day.SetAside[0].Values, day.SetAside[0].Quantity));
        Assert.Empty(day.Doubts);
        Assert.Empty(day.Marks);
        Assert.Empty(day.Stations);
        Assert.Null(day.StandIn);
    }

    [Fact]
    public void The_same_instant_on_another_clock_gives_the_same_text()
    {
        var shifted = FullDay with
        {
            Rain = [.. FullDay.Rain.Select(g => g with { Falls = [.. g.Falls.Select(f => f with { At = f.At.ToOffset(TimeSpan.FromHours(-6)) })] })],
        };
        Assert.Equal(WeatherDayJson.Write(FullDay), WeatherDayJson.Write(shifted));
    }

    [Fact]
    public void A_soil_state_comes_back_bit_for_bit_whatever_order_it_was_built_in()
    {
        var state = State(Day, 40);
        var backwards = state with { DepletionMm = state.DepletionMm.Reverse().ToDictionary() };
        Assert.Equal(SoilStateJson.Write(state), SoilStateJson.Write(backwards));
        _ledger.States.Put(state, "h");
        var back = _ledger.States.Get(Day)!;
        Assert.Equal((Day, "h"), (back.State.Date, back.InputsHash));
        Assert.Equal(state.DepletionMm.OrderBy(d => d.Key.ToString(), StringComparer.Ordinal), back.State.DepletionMm.OrderBy(d => d.Key.ToString(), StringComparer.Ordinal));
    }

    [Fact]
    public void Any_finite_double_survives_the_text() =>
        Gen.Double.Where(double.IsFinite).Array[1, 20].Sample(values =>
        {
            var state = State(Day) with { DepletionMm = values.Select((v, i) => (v, i)).ToDictionary(p => new Core.Sites.StationKey("C", $"{p.i}"), p => p.v) };
            var back = SoilStateJson.Read(SoilStateJson.Write(state));
            return values.Select((v, i) => (v, i)).All(p =>
                BitConverter.DoubleToInt64Bits(p.v) == BitConverter.DoubleToInt64Bits(back.DepletionMm[new Core.Sites.StationKey("C", $"{p.i}")]));
        });

    [Fact]
    public void The_nearest_earlier_state_is_found()
    {
        _ledger.States.Put(State(Day), "h");
        Assert.Null(_ledger.States.NewestUpTo(Day.AddDays(-1)));
        Assert.Equal(Day, _ledger.States.NewestUpTo(Day.AddDays(9))!.State.Date);
        Assert.Null(_ledger.States.Get(Day.AddDays(9)));
    }

    [Fact]
    public void Invalidating_a_day_keeps_the_state_that_rests_on_earlier_days_alone()
    {
        for (var i = 0; i < 4; i++)
        {
            _ledger.Weather.Put(FullDay with { Date = Day.AddDays(i) }, "h");
            _ledger.States.Put(State(Day.AddDays(i)), "h");
        }

        _ledger.InvalidateFrom(Day.AddDays(2));
        Assert.Equal([Day, Day.AddDays(1)], _ledger.Weather.Between(DateOnly.MinValue, DateOnly.MaxValue).Select(w => w.Day.Date));
        Assert.NotNull(_ledger.States.Get(Day.AddDays(2)));
        Assert.Null(_ledger.States.Get(Day.AddDays(3)));
    }

    [Fact]
    public void What_was_derived_is_dropped_whole_and_comes_back_byte_for_byte()
    {
        Derive();
        var before = DerivedText();
        var inputs = _ledger.Watermark;
        _ledger.DropDerived();
        Assert.Equal([0L, 0L, 0L, 0L], new[] { "reading_day", "weather_day", "state", "day_litres" }.Select(t => _ledger.Db.Number($"SELECT count(*) FROM {t}")));
        Assert.Equal([1L, 2L, 3L], _ledger.Files.NotReadWith("yard", "m").Select(f => f.Seq));
        Assert.Equal(inputs, _ledger.Watermark);
        Derive();
        Assert.Equal(before, DerivedText());
        Assert.Equal(8, before.Count);
    }

    [Fact]
    public void A_days_water_is_kept_until_something_before_its_end_changes()
    {
        for (var i = 0; i < 4; i++)
        {
            _ledger.Litres.Put(new StoredLitres(Day.AddDays(i), 0.1 + i, "h"));
            _ledger.States.Put(State(Day.AddDays(i)), "h");
        }

        _ledger.Litres.Put(new StoredLitres(Day, 7, "h2"));
        Assert.Equal([new StoredLitres(Day, 7, "h2"), new StoredLitres(Day.AddDays(1), 1.1, "h")], _ledger.Litres.Between(Day.AddDays(-9), Day.AddDays(1)));

        _ledger.ForgetBalanceFrom(Day.AddDays(2));

        // The day itself is changed; its state is of 00:00.
        Assert.Equal([Day, Day.AddDays(1)], _ledger.Litres.Between(DateOnly.MinValue, DateOnly.MaxValue).Select(d => d.Day));
        Assert.NotNull(_ledger.States.Get(Day.AddDays(2)));
        Assert.Null(_ledger.States.Get(Day.AddDays(3)));
    }

    [Fact]
    public void A_ledger_that_has_no_table_for_it_yet_has_no_water()
    {
        _ledger.Db.Execute("DROP TABLE day_litres");
        Assert.Empty(_ledger.Litres.Between(Day, Day));
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private static ReadingDay Block(DateOnly day, long seq, byte body) => new("yard", day, seq, "m", [body]);

    private List<int> Found(DateOnly first, DateOnly last, long upTo = long.MaxValue) =>
        [.. _ledger.Readings.Between("yard", first, last, upTo).Select(b => (int)b.Body[0])];

    private void Derive()
    {
        for (var i = 1; i <= 3; i++)
        {
            _ledger.Readings.Put([Block(Day, i, Samples.BytesOf(_ledger, i)[0])]);
            _ledger.Files.SetRead(new FileRead(i, "m", 1, 0, 0, ""));
        }

        _ledger.Weather.Put(FullDay, "h");
        _ledger.Weather.Put(FullDay with { Date = Day.AddDays(1) }, "h");
        _ledger.States.Put(State(Day, 40), "h");
        _ledger.States.Put(State(Day.AddDays(1), 40), "h");
        _ledger.Litres.Put(new StoredLitres(Day, 12.5, "h"));
    }

    private List<string> DerivedText() => _ledger.Db.Query(
        """
        SELECT source || day || seq || map_sha || hex(body) FROM reading_day
        UNION ALL SELECT day || inputs || body FROM weather_day
        UNION ALL SELECT day || inputs || body FROM state
        UNION ALL SELECT day || inputs || litres FROM day_litres ORDER BY 1
        """,
        r => r.GetString(0));
}
