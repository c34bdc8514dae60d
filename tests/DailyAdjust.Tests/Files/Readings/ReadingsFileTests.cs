using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

public sealed class ReadingsFileTests
{
    private static readonly IReadOnlyList<WeatherSource> Sources =
    [
        StationFile.Plain with { Id = "yard", Files = "yard-*.csv" },
        StationFile.Plain with { Id = "roof", Files = "roof-20??.txt" },
        StationFile.Plain with { Id = "any", Files = "*.csv" },
    ];

    [Theory]
    [InlineData("yard-2026-06.csv", "yard")]
    [InlineData("YARD-.CSV", "yard")]
    [InlineData("inbox/yard-1.csv", "yard")]
    [InlineData("roof-2026.txt", "roof")]
    [InlineData("roof-202.txt", null)]
    [InlineData("roof-20261.txt", null)]
    [InlineData("other.csv", "any")]
    [InlineData("yard-1.csv.part", null)]
    [InlineData("", null)]
    public void TheFirstSourceThatFitsTheNameTakesTheFile(string name, string? source) =>
        Assert.Equal(source, ReadingsFile.SourceOf(name, Sources)?.Id);
}
