using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Files.Guess;

/// <summary>The sun tells which clock wrote a file, and whether its times end or begin their intervals; where it cannot, that is said.</summary>
public sealed class GuessClockTests
{
    [Theory]
    [InlineData(10, StampClock.Local, StampMeaning.Start)]
    [InlineData(10, StampClock.Standard, StampMeaning.End)]
    [InlineData(15, StampClock.Utc, StampMeaning.Start)]
    [InlineData(60, StampClock.Utc, StampMeaning.End)]
    [InlineData(60, StampClock.Local, StampMeaning.End)]
    [InlineData(60, StampClock.Standard, StampMeaning.Start)]
    public void Ten_days_of_summer_tell_clock_and_stamp(int minutes, StampClock clock, StampMeaning stamp)
    {
        var file = GuessedFile.Read(Text(new(2026, 6, 20), 10, minutes, clock, stamp), GuessedFile.Place);
        Assert.Equal((clock, stamp), (file.Source.Time.Clock, file.Source.Time.Stamp));
        Assert.True(file.IsSure("time.clock") && file.IsSure("time.stamp"));
        Assert.Contains("min from solar noon", file.Finding("time.clock").Why, StringComparison.Ordinal);
    }

    [Fact]
    public void In_summer_hours_that_begin_in_summer_time_are_hours_that_end_in_standard_time()
    {
        var summer = GuessedFile.Read(Text(new(2026, 6, 20), 10, 60, StampClock.Standard, StampMeaning.End), GuessedFile.Place);
        Assert.False(summer.IsSure("time.clock"));
        Assert.False(summer.IsSure("time.stamp"));
        Assert.Contains("standard and end", summer.Finding("time.clock").Why, StringComparison.Ordinal);

        var withTheChange = GuessedFile.Read(Text(new(2026, 10, 26), 14, 60, StampClock.Standard, StampMeaning.End), GuessedFile.Place);
        Assert.Equal((StampClock.Standard, StampMeaning.End), (withTheChange.Source.Time.Clock, withTheChange.Source.Time.Stamp));
        Assert.True(withTheChange.IsSure("time.clock") && withTheChange.IsSure("time.stamp"));
    }

    [Fact]
    public void Winter_does_not_tell_summer_time_from_standard_time()
    {
        var file = GuessedFile.Read(Text(new(2026, 1, 10), 10, 10, StampClock.Standard, StampMeaning.End), GuessedFile.Place);
        Assert.False(file.IsSure("time.clock"));
        Assert.True(file.IsSure("time.stamp"));
    }

    [Fact]
    public void Five_minutes_are_too_short_for_the_sun_to_tell_their_ends()
    {
        var file = GuessedFile.Read(Text(new(2026, 6, 20), 10, 5, StampClock.Local, StampMeaning.Start), GuessedFile.Place);
        Assert.True(file.IsSure("time.clock"));
        Assert.False(file.IsSure("time.stamp"));
    }

    [Fact]
    public void A_header_that_the_sun_contradicts_is_not_believed_in_silence()
    {
        var file = GuessedFile.Read(Text(new(2026, 6, 20), 10, 10, StampClock.Local, StampMeaning.End).Replace("Time,", "Time (UTC),", StringComparison.Ordinal), GuessedFile.Place);
        Assert.Equal(StampClock.Utc, file.Source.Time.Clock);
        Assert.False(file.IsSure("time.clock"));
        Assert.Contains("local and end", file.Finding("time.clock").Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_station_with_its_clock_three_hours_off_fits_none()
    {
        var file = GuessedFile.Read(Text(new(2026, 6, 20), 10, 10, StampClock.Local, StampMeaning.End, TimeSpan.FromHours(-3)), GuessedFile.Place);
        Assert.False(file.IsSure("time.clock"));
        Assert.Contains("fits no clock", file.Finding("time.clock").Why, StringComparison.Ordinal);
    }

    private static string Text(DateOnly first, int days, int minutes, StampClock clock, StampMeaning stamp, TimeSpan off = default) =>
        "Time,Temp (°C),Solar (W/m²)\n" + string.Concat(InventedWeather.Of(first, days, TimeSpan.FromMinutes(minutes), new Dice(5)).Select(r =>
        {
            var at = (stamp == StampMeaning.End ? r.End : r.Begin) + off;
            var shown = clock switch
            {
                StampClock.Utc => at.UtcDateTime,
                StampClock.Standard => at.UtcDateTime.AddHours(-6),
                _ => GuessedFile.Place.Clock.ToLocal(at).DateTime,
            };
            return string.Create(CultureInfo.InvariantCulture, $"{shown:yyyy-MM-dd HH:mm},{r.AirTemperatureC:0.0},{r.SolarRadiationMJPerM2 * 1e6 / (60 * minutes):0}\n");
        }));
}
