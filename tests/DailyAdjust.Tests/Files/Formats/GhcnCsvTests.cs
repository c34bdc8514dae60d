using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>GHCN-Daily as CSV: by year, and per station with flags beside the values.</summary>
public sealed class GhcnCsvTests
{
    private const string Format = "ghcn-daily";
    private const string Header = "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"TMAX\",\"TMAX_ATTRIBUTES\"\n";

    [Fact]
    public void ByYear_EveryRowIsOneValueOnTheDayOfItsObservation()
    {
        var read = FormatFile.Read(Format, """
            USC00111111,20260601,TMAX,289,,,7,1700
            USC00111111,20260601,TMIN,156,,,7,2400
            USC00111111,20260601,PRCP,25,,,7,0700
            USC00111111,20260602,PRCP,0,T,,7,0700
            USC00111111,20260603,PRCP,51,,,7,
            USC00111111,20260603,SNOW,0,,,7,

            """);

        Assert.Empty(read.Report.Problems);
        Assert.Equal((6, 0, 0), read.Counts);
        Assert.Equal((28.9, 15.6, 0), (read.On("2026-06-01").AirTemperatureMaxC, read.On("2026-06-01").AirTemperatureMinC, read.On("2026-06-01").RainMm));
        Assert.Equal(["AirTemperatureMax OtherWindow 24 h to 17:00", "Rain Trace 0 T 7", "Rain OtherWindow 24 h to 07:00 of the next day"], read.On("2026-06-01").Marked());
        Assert.Equal(2.5, read.On("2026-05-31").RainMm);
        Assert.Equal(5.1, read.On("2026-06-03").RainMm);
        Assert.Empty(read.On("2026-06-03").Marked());
    }

    [Fact]
    public void ByYear_ARowThatIsNotSureIsRefusedOrSetAside()
    {
        var read = FormatFile.Read(Format, """
            ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME
            USC00111111,20260601,PRCP,25,,,7,0000
            USC00111111,20260601,PRCP,2.5,,,7,0700
            USC00111111,20260601,PRCP,25,,,7
            USC00111111,20260631,PRCP,25,,,7,0700
            USC00111111,20260601,PRCP,25,X,,7,0700
            usc00111111,20260601,PRCP,25,,,7,0700
            USC00111111,20260601,PRCP,25,,,7,0760
            USC00111111,20260601,P CP,25,,,7,0700
            USC00111111,20260601,PRCP,25,,,7,
            """);

        Assert.Equal((0, 2, 7), read.Counts);
        Assert.Empty(read.Readings);
        Assert.Equal(
            [
                (2, 8, "0000 may be the beginning of the date or its end"),
                (3, 4, "PRCP: \"2.5\" is not a whole number; the value is set aside"),
                (4, 7, "the row has 7 cells and needs 8"),
                (5, 2, "\"20260631\" is not a date as 20260601"),
                (6, 4, "PRCP: \"X 7\" are not flags of the format; the value is set aside"),
                (7, 1, "\"usc00111111\" is not a station's code of 11 letters and digits"),
                (8, 8, "\"0760\" is not a time of observation as 0700"),
                (9, 3, "\"P CP\" is not the name of an element"),
                (10, 8, "the row may be cut: the file ends without ending this line"),
            ],
            read.Told());
    }

    [Fact]
    public void ByYear_TheSitesTimeOfObservationComesBeforeTheFiles()
    {
        var read = FormatFile.Read(Format, "USC00111111,20260601,PRCP,25,,,7,0000\n", observedAt: "08:30");

        Assert.Equal(["Rain OtherWindow 24 h to 08:30 of the next day"], read.On("2026-05-31").Marked());
    }

    [Fact]
    public void ByYear_OneStationOfTheWorldIsPickedByItsCode()
    {
        var read = FormatFile.Read(Format, "USC00222222,20260601,PRCP,1,,,7,2400\nUSC00111111,20260601,PRCP,2,,,7,2400\nUSC00222222,20260602,PRCP,3,,,7,2400\n", "USC00111111");

        Assert.Equal((1, 0, 0), read.Counts);
        Assert.Equal(0.2, read.On("2026-06-01").RainMm);
        Assert.Equal([(1, 1, "2 rows of other stations are passed over: USC00222222")], read.Told());
    }

    [Fact]
    public void PerStation_ARowIsADayWithItsFlagsBesideTheValues()
    {
        var read = FormatFile.Read(Format, Header + """
            "USC00111111","2026-06-01","41.9","-87.6","180.0","YARD, IL US","   25",",,7,0700","  289",",,7,1700"
            "USC00111111","2026-06-02","41.9","-87.6","180.0","YARD, IL US","    0","T,,7,0700","",""
            "USC00111111","2026-06-03","41.9","-87.6","180.0","YARD, IL US","   76",",I,7,0700","  301",",,7"

            """);

        Assert.All(read.Report.Problems, p => Assert.Contains("because the source marks", p.ToString(), StringComparison.Ordinal));
        Assert.Equal((3, 0, 0), read.Counts);
        Assert.Equal(2.5, read.On("2026-05-31").RainMm);
        Assert.Equal((28.9, 0), (read.On("2026-06-01").AirTemperatureMaxC, read.On("2026-06-01").RainMm));
        Assert.Equal(["AirTemperatureMax OtherWindow 24 h to 17:00", "Rain Trace 0 T 7", "Rain OtherWindow 24 h to 07:00 of the next day"], read.On("2026-06-01").Marked());
        Assert.Equal(["Rain FailedAtSource 76  I7"], read.On("2026-06-02").Marked());
        Assert.Equal(double.NaN, read.On("2026-06-02").RainMm);
        Assert.Equal(30.1, read.On("2026-06-03").AirTemperatureMaxC);
    }

    [Fact]
    public void PerStation_AValueWithoutItsFlagsIsSetAside()
    {
        var read = FormatFile.Read(Format, Header + """
            "USC00111111","2026-06-01","41.9","-87.6","180.0","YARD, IL US","   25","7","  289",",,7,1700"
            "USC00111111","06/02/2026","41.9","-87.6","180.0","YARD, IL US","   25",",,7","  289",",,7,1700"
            "USC00111111","2026-06-03","41.9","-87.6","180.0","YARD, IL US","   25",",,7","  289"
            "USC00111111","2026-06-04","41.9","-87.6","180.0","YARD, IL US","   25",",,7","  2 9",",,7,1700"
            "USC00111111","2026-06-05","41.9","-87.6","180.0",YARD "1","   25",",,7","  289",",,7,1700"

            """);

        Assert.Equal((0, 2, 3), read.Counts);
        Assert.Equal([28.9, double.NaN], read.Readings.Select(r => r.AirTemperatureMaxC));
        Assert.Equal([double.NaN, 2.5], read.Readings.Select(r => r.RainMm));
        Assert.Equal(
            [
                (2, 8, "PRCP: \"7\" are not its flags as \",,W,2400\"; the value is set aside"),
                (3, 2, "\"06/02/2026\" is not a date as 2026-06-01"),
                (4, 9, "the row has 9 cells and the header has 10"),
                (5, 9, "TMAX: \"2 9\" is not a whole number; the value is set aside"),
                (6, 6, "a quote stands where none can be"),
            ],
            read.Told());
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("Date,Rain (mm)\n2026-06-01,1\n", true)]
    [InlineData("\"STATION\",\"NAME\",\"DATE\",\"PRCP\",\"TMAX\"\n\"USC00111111\",\"YARD\",\"2026-06-01\",\"0.10\",\"84\"\n", true)]
    public void WhatIsNoneOfTheLayoutsIsRefusedWhole(string text, bool isText)
    {
        var read = FormatFile.Read(Format, text);

        Assert.True(read.Report.FileRefused);
        Assert.Equal(isText ? "the file is not GHCN-Daily: neither .dly, nor CSV by year, nor CSV per station with its flags" : "the file is empty", Assert.Single(read.Told()).What);
    }
}
