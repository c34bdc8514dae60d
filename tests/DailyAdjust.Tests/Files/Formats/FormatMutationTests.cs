using System.Collections;
using System.Globalization;
using System.Text;
using DailyAdjust.Files.Formats;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>
/// Good files of every format, spoilt at random from a seed: nothing throws, every line is counted once, and no number appears that neither the
/// good file nor a spoilt line has. DAILYADJUST_MUTATIONS says how many of each format; a failure names its seed.
/// </summary>
[Trait("Promise", "10")]
public sealed class FormatMutationTests
{
    private static readonly int Count =
        int.TryParse(Environment.GetEnvironmentVariable("DAILYADJUST_MUTATIONS"), NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 300;

    /// <summary>Those that are in the good file; nothing that is done to it makes another of one.</summary>
    private static readonly string[] Layers = ["temperature", "windSpeed", "quantitativePrecipitation"];

    public static TheoryData<string> Names() => new(GoodFiles.ByLines.Select(file => file.Name));

    public static TheoryData<string> Packed() => new(["ghcn by year gzip", "gsod gzip", "ghcn by year zip", "gsod zip"]);

    [Fact]
    public void EveryPublicFormatHasAGoodFile() =>
        Assert.Empty(FormatNames().Except([.. GoodFiles.ByLines.Select(file => file.Source?.Format ?? ""), GoodFiles.Gridpoint.Format], StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void GoodFilesAreGood(string name)
    {
        var file = GoodFiles.ByLines.Single(f => string.Equals(f.Name, name, StringComparison.Ordinal));
        var read = file.Read(Encode(file.Header.Concat(file.Rows)));

        Assert.Empty(read.Report.Problems);
        Assert.Equal((file.Rows.Count, 0, 0), read.Counts);
        Assert.NotEmpty(Values(read));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void SpoiltLinesSpoilNothingElse(string name)
    {
        var file = GoodFiles.ByLines.Single(f => string.Equals(f.Name, name, StringComparison.Ordinal));
        var good = Values(file.Read(Encode(file.Header.Concat(file.Rows))));
        var refused = 0;
        for (var seed = 0; seed < Count; seed++)
        {
            var onlyJunk = seed % 2 == 0;
            var lines = Spoiling.Lines(file.Rows, seed, onlyJunk);
            var bytes = Join(file, lines);
            var cut = seed % 5 == 4 ? Math.Max(Join(file, []).Length, bytes.Length - (seed * 31 % 400)) : bytes.Length;
            var read = file.Read(bytes[..cut]);
            if (read.Report.FileRefused)
            {
                Assert.True(read.Report.Problems.Count > 0, $"{name}, seed {seed}: refused without a reason");
                refused++;
                continue;
            }

            var counted = read.Report.RowsRead + read.Report.RowsSetAside + read.Report.RowsRefused + RowCounts.OfOthers(read.Report);
            Assert.True(Lines(bytes[..cut], file) == counted, $"{name}, seed {seed}: {Lines(bytes[..cut], file)} lines, {counted} counted");
            var allowed = good.ToHashSet();
            if (!onlyJunk)
            {
                // Each by itself: what the others are like must not matter.
                foreach (var line in lines.Where(line => line.IsSpoilt))
                {
                    allowed.UnionWith(Values(file.Read(Join(file, [line]))));
                }
            }

            var strange = Values(read).Except(allowed).ToList();
            Assert.True(strange.Count == 0 || cut < bytes.Length && !onlyJunk, $"{name}, seed {seed}: {string.Join("; ", strange)}");
        }

        // A reader that refused every file would pass all of the above.
        Assert.True(refused <= Count / 4, $"{name}: {refused} of {Count} refused");
    }

    /// <summary>Its rows are values of layers: those of a spoilt document that is still JSON are counted by another reader of JSON.</summary>
    [Fact]
    public void ASpoiltForecastIsCountedOrRefused()
    {
        var text = GoodFiles.GridpointText;
        for (var seed = 0; seed < Count; seed++)
        {
            var bytes = Encoding.UTF8.GetBytes(string.Join('\n', Spoiling.Lines(text.Split('\n'), seed, onlyJunk: seed % 2 == 0).Select(line => Encoding.Latin1.GetString(line.Text))));
            var read = FormatFile.Read(GoodFiles.Gridpoint, bytes);
            if (!read.Report.FileRefused)
            {
                Assert.True(RowCounts.OfForecast(bytes, Layers) == read.Report.RowsRead + read.Report.RowsSetAside + read.Report.RowsRefused, $"seed {seed}");
            }
        }
    }

    /// <summary>A check sum stands behind the packed bytes: what is read is the good file's, or the file is refused.</summary>
    [Theory]
    [MemberData(nameof(Packed))]
    public void ASpoiltPackedFileIsReadRightOrRefused(string name)
    {
        var file = GoodFiles.ByLines.Single(f => name.StartsWith(f.Name + " ", StringComparison.Ordinal));
        var plain = Encode(file.Header.Concat(file.Rows));
        var packed = name.EndsWith("gzip", StringComparison.Ordinal) ? Packing.Gzip(plain) : Packing.Zip(("a.csv", plain));
        var good = Values(file.Read(packed));
        for (var seed = 0; seed < Count; seed++)
        {
            var random = new Random(seed);
            List<byte> bytes = [.. packed];
            for (var changes = random.Next(3); changes >= 0; changes--)
            {
                Spoiling.Byte(bytes, random.NextDouble(), (byte)random.Next(256), random.Next(4));
            }

            var read = file.Read([.. bytes.Take(seed % 4 == 0 ? random.Next(bytes.Count) : bytes.Count)]);
            var strange = read.Report.FileRefused ? [] : Values(read).Except(good).ToList();
            Assert.True(strange.Count == 0, $"{name}, seed {seed}: {string.Join("; ", strange)}");
        }
    }

    /// <summary>The reader's own list, so that a format that is added is missed here.</summary>
    private static IEnumerable<string> FormatNames() =>
        ((IEnumerable)typeof(WeatherFileReader).Assembly.GetType("DailyAdjust.Files.Formats.PublicFormats", throwOnError: true)!.GetProperty("All")!.GetValue(null)!)
            .Cast<object>().Select(format => (string)format.GetType().GetProperty("Name")!.GetValue(format)!);

    private static byte[] Encode(IEnumerable<string> lines) => Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line + "\n")));

    private static byte[] Join(GoodFile file, IReadOnlyList<SpoiltLine> lines) => [.. Encode(file.Header), .. lines.SelectMany(line => line.Text.Append((byte)'\n'))];

    private static int Lines(byte[] bytes, GoodFile file) =>
        RowCounts.Lines(Encoding.UTF8.GetString(bytes[Encode(file.Header).Length..]), string.Equals(file.Source?.Format, "csv", StringComparison.Ordinal));

    private static HashSet<(DateTimeOffset Begin, DateTimeOffset End, int Column, double Value)> Values(Result read) =>
    [
        .. read.Days.SelectMany(day => day.Readings).SelectMany(r => new[]
        {
            r.AirTemperatureC, r.AirTemperatureMaxC, r.AirTemperatureMinC, r.RelativeHumidityPercent, r.RelativeHumidityMaxPercent, r.RelativeHumidityMinPercent,
            r.DewPointC, r.WindSpeedMPerS, r.SolarRadiationMJPerM2, r.SunshineH, r.RainMm, r.ReferenceEtMm, r.RainChancePercent, r.RainCounterMm,
        }.Select((value, column) => (r.Begin, r.End, column, value))).Where(v => !double.IsNaN(v.value)),
    ];
}
