using DailyAdjust.ServiceTests.Fallback;

namespace DailyAdjust.ServiceTests.Night;

/// <summary>A small course of its own, on the example's weather: three boxes, a pump that carries two of them, play from 06:30.</summary>
internal static class NightHome
{
    private const string Controllers =
        """
        priority: [greens, tees, fairways, rough]
        controllers:
          - id: K1
            place: by the well
            route: 1
            percent: { applies: program, min: 0 %, max: 200 %, step: 5 % }
            minutes: { step: 1 min, rounding: nearest }
            programs:
              - { id: P1, name: Upper greens, starts: ["01:00"], days: every day, visit: daily }
          - id: K2
            place: behind the barn
            route: 2
            percent: { applies: program, min: 0 %, max: 200 %, step: 5 % }
            minutes: { step: 1 min, rounding: nearest }
            programs:
              - { id: P1, name: Lower greens, starts: ["02:00"], days: every day, visit: daily }
          - id: K3
            place: ninth green
            route: 3
            clock: standard
            percent: { applies: program, min: 0 %, max: 200 %, step: 5 % }
            minutes: { step: 1 min, rounding: nearest }
            overlap: stack
            programs:
              - { id: P1, name: Tees, starts: ["01:20"], days: every day, visit: daily }
              - { id: P2, name: Rough, starts: ["01:40"], days: every day, visit: daily }

        """;

    private const string Stations =
        """
        controller,station,name,area,minutes P1,minutes P2,precipitation rate (in/h),rate known,flow (gpm),area watered (ft²),exposure,gauge,note
        K1,1,green 1,greens,24,,0.55,catalogue,90,15800,1.0,,
        K1,2,green 2,greens,24,,0.55,catalogue,90,15800,1.0,,
        K1,3,green 3,greens,24,,0.55,catalogue,90,15800,1.0,,
        K2,1,green 4,greens,24,,0.55,catalogue,100,17500,1.0,,
        K2,2,green 5,greens,24,,0.55,catalogue,100,17500,1.0,,
        K3,1,tee 1,tees,20,,0.60,catalogue,60,9600,1.0,,
        K3,2,tee 2,tees,20,,0.60,catalogue,60,9600,1.0,,
        K3,3,rough 1,rough,,20,0.40,catalogue,110,26500,1.0,,

        """;

    public static FallbackHome Create()
    {
        var home = new FallbackHome().With(
            ("  satisfy: 80 %", "  first_play: \"06:30\"\n  satisfy: 80 %"),
            ("pump: { capacity: 850 gpm }", "pump: { capacity: 200 gpm }"));
        var yaml = File.ReadAllText(home.Site.SiteFile);
        File.WriteAllText(home.Site.SiteFile, yaml[..yaml.IndexOf("controllers:", StringComparison.Ordinal)] + Controllers.ReplaceLineEndings("\n"));
        File.WriteAllText(home.Site.StationsFile, Stations.ReplaceLineEndings("\n"));
        return home;
    }
}
