using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Published;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>[FAO56] examples 36-38: the root zone day by day. Values, pages and tolerances stand in Published/root-zone/fao56.csv.</summary>
public class PublishedRootZoneTests
{
    private static readonly Dictionary<string, double> WaterMmPerM = new(StringComparer.Ordinal) { ["loamy sand"] = 90, ["silt"] = 170, ["silty clay"] = 120 };

    private static readonly Dictionary<string, (double RootM, double Share)> Crops = new(StringComparer.Ordinal)
    {
        ["onion"] = (0.4, 0.3),
        ["tomato"] = (0.8, 0.4),
        ["maize"] = (1.2, 0.55),
    };

    [Fact]
    public void Example_36_total_and_readily_available_water()
    {
        var rows = Rows("Ex 36 ");
        Assert.Equal(18, rows.Count);
        foreach (var row in rows)
        {
            var words = row[0].Split(' ', 5);
            var (root, share) = Crops[words[3]];
            var day = OneZone.Run(OneZone.Site(Ground(WaterMmPerM[words[4]], root, share)), [OneZone.Day(0, 0)])[0];
            Near(row, string.Equals(words[2], "TAW", StringComparison.Ordinal) ? day.TawMm : day.RawMm);
        }
    }

    [Fact]
    public void Example_37_stress_without_water()
    {
        // θ 0.32 - 0.12 over 0.8 m, p 0.40; ETo 5 mm, Kc 1.2, depletion at first 55 mm.
        var area = Ground(200, 0.8, 0.40) with { Kc = OneZone.Kc(1.2) };
        var days = OneZone.Run(OneZone.Site(area), [.. Enumerable.Range(0, 10).Select(n => OneZone.Day(n, 5))], 55);
        var rows = Rows("Ex 37 ");
        Assert.Equal(22, rows.Count);
        Near(rows[0], days[0].TawMm);
        Near(rows[1], days[0].RawMm);
        for (var n = 0; n < 10; n++)
        {
            Near(rows[2 + (2 * n)], days[n].Ks);
            Near(rows[3 + (2 * n)], days[n].DepletionMm);
        }
    }

    [Fact]
    public void Example_38_water_before_sunrise()
    {
        // Inputs as printed, p. 173: ETo, Kc, P - RO, I; roots grow day by day; irrigation begins at the allowable depletion.
        (double Root, double Eto, double Kc, double Rain, double Water)[] table =
        [
            (0.3000, 4.5, 1.21, 0, 40), (0.3056, 5.0, 1.21, 0, 0), (0.3111, 3.9, 1.04, 0, 0), (0.3167, 4.2, 0.70, 0, 0), (0.3222, 4.8, 0.52, 0, 0),
            (0.3278, 2.7, 1.00, 6, 0), (0.3333, 5.8, 0.82, 0, 0), (0.3389, 5.1, 0.55, 0, 0), (0.3444, 4.7, 0.47, 0, 0), (0.3500, 5.2, 1.21, 0, 27),
        ];
        var versions = table.Select((t, n) => new SiteVersion(OneZone.First.AddDays(n), OneZone.Site(Ground(130, t.Root, 0.6) with { Kc = OneZone.Kc(t.Kc) }))).ToList();
        var weather = table.Select((t, n) => OneZone.Day(n, t.Eto, t.Rain)).ToList();
        var log = table.Select((t, n) => OneZone.Entry(n, new(3, 0), LogKind.Hose, t.Water, LogUnit.Mm)).Where(e => e.Value > 0).ToList();
        var days = OneZone.Run(versions, weather, 0.6 * 130 * 0.3, log);

        var rows = Rows("Ex 38 ");
        Assert.Equal(30, rows.Count);
        for (var n = 0; n < 10; n++)
        {
            Near(rows[3 * n], days[n].RawMm);
            Near(rows[(3 * n) + 1], days[n].DepletionMm);
            Near(rows[(3 * n) + 2], days[n].DrainageMm);
        }
    }

    [Fact]
    public void Water_after_sunset_is_equation_88()
    {
        // [FAO56] eq. 88, p. 170: what the evening's water exceeds is what the day's draw has not made room for.
        var log = new[] { OneZone.Entry(0, new(22, 0), LogKind.Hose, 8, LogUnit.Mm) };
        var day = OneZone.Run(OneZone.Site(OneZone.Area), [OneZone.Day(0, 5)], 2, log)[0];
        Assert.Equal(5, day.EtcMm, 9);
        Assert.Equal(8 - 5 - 2, day.DrainageMm, 9);
        Assert.Equal(0, day.DepletionMm, 9);
    }

    private static Area Ground(double waterMmPerM, double rootM, double share) => OneZone.Area with
    {
        Soil = OneZone.Area.Soil with { AvailableWaterMmPerM = waterMmPerM },
        RootDepthM = rootM,
        AllowableDepletion = share,
    };

    private static List<IReadOnlyList<string>> Rows(string example) =>
        [.. PublishedTable.Rows("root-zone", "fao56.csv").Where(r => r[0].StartsWith(example, StringComparison.Ordinal))];

    private static void Near(IReadOnlyList<string> row, double value)
    {
        var expected = PublishedTable.Number(row[2]);
        Assert.True(
            Math.Abs(value - expected) <= PublishedTable.Number(row[3]),
            string.Create(CultureInfo.InvariantCulture, $"{row[0]} ({row[4]}): printed {expected}, got {value}"));
    }
}
