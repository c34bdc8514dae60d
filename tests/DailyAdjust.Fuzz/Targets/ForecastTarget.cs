using System.Text;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Tests.Files.Formats;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>The forecast JSON.</summary>
internal sealed class ForecastTarget() : Target("forecast", 12, [Bytes(GoodFiles.GridpointText), Bytes(GoodFiles.GridpointText.ReplaceLineEndings("").Replace("  ", "", StringComparison.Ordinal))])
{
    /// <summary>Those of the good file; damage may make one of the others, which is then counted as well.</summary>
    private static readonly string[] Layers = ["temperature", "windSpeed", "quantitativePrecipitation"];

    public override void Try(byte[] bytes, Random random)
    {
        var clock = WeatherFile.Clock(random);
        var read = WeatherFile.Read(GoodFiles.Gridpoint, bytes, clock);
        Hold.Same(read, WeatherFile.Read(GoodFiles.Gridpoint, bytes, clock));
        var text = WeatherFile.Text(bytes);
        WeatherFile.Check(read, text, clock, isJson: true);
        if (!read.Report.FileRefused)
        {
            var counted = read.Report.RowsRead + read.Report.RowsSetAside + read.Report.RowsRefused;
            var values = RowCounts.OfForecast(Encoding.UTF8.GetBytes(text.TrimStart('\uFEFF')), Layers);
            Hold.That(counted >= values, $"{values} values, and {counted} were counted");
        }
    }
}
