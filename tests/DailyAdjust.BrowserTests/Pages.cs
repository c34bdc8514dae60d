using DailyAdjust.ServiceTests;

namespace DailyAdjust.BrowserTests;

/// <summary>
/// The pages that the real program writes: of the demo, of the same course with names that nobody should give, and of it on a morning with boxes that pause and doubtful weather, in
/// English and in Spanish.
/// </summary>
public sealed class Pages : IDisposable
{
    private const string LastMorning = "2026-07-16";

    /// <summary>With a round before it that nobody answered: a dial may show one thing or the other.</summary>
    private const string DayAfter = "2026-07-17";

    /// <summary>Before the rain, with ground to hose and a night that does not fit.</summary>
    private const string DryMorning = "2026-07-14";

    private readonly string _folder = Directory.CreateTempSubdirectory("dailyadjust-browser-").FullName;
    private readonly Dictionary<string, string> _files = new(StringComparer.Ordinal);

    public Pages()
    {
        var demo = Path.Combine(_folder, "demo");
        Run("demo", "--home", demo);
        Run("door-card", "--home", demo);
        Keep("", demo, LastMorning);
        _files["dry sheet"] = Before("sheet", DryMorning);
        var hostile = Path.Combine(_folder, "hostile");
        HostileNames.Build(hostile);
        Run("morning", "--home", hostile, "--date", LastMorning);
        Keep("hostile ", hostile, LastMorning);
        foreach (var (prefix, language) in new[] { ("pause ", "en"), ("Spanish ", "es") })
        {
            var home = Path.Combine(_folder, language);
            DoubtfulCourse.Build(home, language);
            Run("morning", "--home", home, "--date", LastMorning);
            Run("morning", "--home", home, "--date", DayAfter);
            Keep(prefix, home, DayAfter);
        }

        _files["doubtful sheet"] = Before("pause sheet", LastMorning);
    }

    /// <summary>The pages by name, as tests take them.</summary>
    public static IReadOnlyList<string> Names { get; } = 
    [
        "sheet", "dry sheet", "index", "week", "season", "door cards", "hostile sheet", "hostile index", "hostile season",
        "pause sheet", "pause index", "pause week", "doubtful sheet", "Spanish sheet",
    ];

    /// <summary>The path of a page.</summary>
    public string this[string name] => _files[name];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static void Run(params string[] arguments)
    {
        if (RunningProgram.Run(arguments) is { ExitCode: not 0 } failed)
        {
            throw new InvalidOperationException(failed.ToString());
        }
    }

    /// <summary>The page of an earlier morning of the same site.</summary>
    private string Before(string sheet, string morning) => Path.Combine(Path.GetDirectoryName(Path.GetDirectoryName(_files[sheet])!)!, morning, "report.html");

    private void Keep(string prefix, string home, string morning)
    {
        _files[prefix + "index"] = Path.Combine(home, "index.html");
        var site = Directory.GetDirectories(Path.Combine(home, "sites")).Single();
        _files[prefix + "sheet"] = Path.Combine(site, "reports", morning, "report.html");
        foreach (var (name, pattern) in new[] { ("week", "week-*.html"), ("season", "season-*.html"), ("door cards", "door-card*.html") })
        {
            if (Directory.GetFiles(site, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal).LastOrDefault() is { } file)
            {
                _files[prefix + name] = file;
            }
        }
    }
}
