using System.Text.Json;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Probe, hot spot and a green watered by hand, through the real program.</summary>
public sealed class GroundTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public GroundTests()
    {
        _site = ExampleSite.PutInto(_home);
        var yaml = File.ReadAllText(_site.SiteFile);
        var begin = yaml.IndexOf("  greens:", StringComparison.Ordinal);
        var greens = yaml[begin..yaml.IndexOf("  tees:", StringComparison.Ordinal)];
        File.WriteAllText(_site.SiteFile, yaml.Insert(begin, greens.Replace("  greens:\n", "  nursery:\n    by_hand: true\n", StringComparison.Ordinal)));
        File.AppendAllText(_site.StationsFile, "C1,20,nursery green,nursery,,,,0.55,assumed,49,1000,1.0,,\n");
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void What_was_found_in_the_ground_stands_on_every_form_of_the_sheet()
    {
        File.WriteAllText(Path.Combine(_site.Inbox, "yard-1.csv"), ExampleSite.WeatherUntil("2026-06-14 05:00"));
        File.WriteAllText(Path.Combine(_site.Inbox, "logbook.csv"), """
            time,kind,where,value,unit,until,by,note,instrument,rod length
            2026-06-13 06:15,probe,C1/1,14,%,,,,meter 2,3 in
            2026-06-13 06:50,probe,C1/1,12,%,,,,meter 2,3 in
            2026-06-13 17:00,spot,C1/2,6,%,,,back left
            2026-06-13 17:05,spot,C1/3,6,%,,,
            2026-06-13 17:30,hose,C1/3,spot,,,,

            """);
        var result = RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-14");
        Assert.True(result.ExitCode == 0, result.ToString());

        using var json = JsonDocument.Parse(Report("advice.json"));
        var ground = json.RootElement.GetProperty("ground");
        var probe = Assert.Single(ground.GetProperty("probes").EnumerateArray());
        Assert.Equal("2026-06-13T06:50", probe.GetProperty("at").GetString());
        Assert.Equal(("meter 2", 0.0762), (probe.GetProperty("instrument").GetString(), Math.Round(probe.GetProperty("rodM").GetDouble(), 6)));
        var spot = Assert.Single(ground.GetProperty("spots").EnumerateArray());
        Assert.Equal("2", spot.GetProperty("station").GetString());
        var hand = Assert.Single(ground.GetProperty("byHand").EnumerateArray());
        Assert.Equal("20", hand.GetProperty("station").GetString());
        Assert.InRange(hand.GetProperty("etoL").GetDouble() / hand.GetProperty("etoMm").GetDouble(), 92.9, 92.91); // 1000 ft² in m²
        Assert.DoesNotContain(json.RootElement.GetProperty("programs").EnumerateArray().SelectMany(p => p.GetProperty("zones").EnumerateArray()), z => z.GetProperty("name").ValueEquals("nursery green"));
        Assert.DoesNotContain(ground.GetProperty("driest").EnumerateArray(), d => d.GetProperty("station").ValueEquals("20"));

        foreach (var report in new[] { Report("report-full.txt"), Report("report.html") })
        {
            var text = string.Join(' ', System.Net.WebUtility.HtmlDecode(report).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            Assert.Contains("Hot spots: hose the spot, not the zone", text, StringComparison.Ordinal);
            Assert.Contains("(back left)", text, StringComparison.Ordinal);
            Assert.Contains("the balance said", text, StringComparison.Ordinal);
            Assert.Contains("(meter 2, 3 in rods)", text, StringComparison.Ordinal);
            Assert.Contains("The rods end at 3 in, the roots at ", text, StringComparison.Ordinal);
            Assert.Contains("Watered by hand", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Minutes_on_ground_that_is_watered_by_hand_are_refused()
    {
        File.WriteAllText(_site.StationsFile, File.ReadAllText(_site.StationsFile).Replace("C1,20,nursery green,nursery,,,,", "C1,20,nursery green,nursery,,5,,", StringComparison.Ordinal));
        var check = RunningProgram.Run("check", "--home", _home.Path);
        Assert.Equal(2, check.ExitCode);
        Assert.Contains("is watered by hand", check.Output, StringComparison.Ordinal);
    }

    private string Report(string name) => File.ReadAllText(Path.Combine(_site.Path, "reports", "2026-06-14", name));
}
