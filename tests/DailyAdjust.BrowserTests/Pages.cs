using DailyAdjust.ServiceTests;

namespace DailyAdjust.BrowserTests;

/// <summary>The pages that the real program writes: of the demo, and of the same course with names that nobody should give.</summary>
public sealed class Pages : IDisposable
{
    private const string LastMorning = "2026-07-16";

    /// <summary>Before the rain, with ground to hose and a night that does not fit.</summary>
    private const string DryMorning = "2026-07-14";

    private readonly string _folder = Directory.CreateTempSubdirectory("dailyadjust-browser-").FullName;
    private readonly Dictionary<string, string> _files = new(StringComparer.Ordinal);

    public Pages()
    {
        var demo = Path.Combine(_folder, "demo");
        Run("demo", "--home", demo);
        Run("door-card", "--home", demo);
        Keep("", demo);
        _files["dry sheet"] = Path.Combine(Path.GetDirectoryName(Path.GetDirectoryName(_files["sheet"])!)!, DryMorning, "report.html");
        var hostile = Path.Combine(_folder, "hostile");
        HostileNames.Build(hostile);
        Run("morning", "--home", hostile, "--date", LastMorning);
        Keep("hostile ", hostile);
    }

    /// <summary>The pages by name, as tests take them.</summary>
    public static IReadOnlyList<string> Names { get; } = ["sheet", "index", "week", "season", "door cards", "hostile sheet", "hostile index"];

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

    private void Keep(string prefix, string home)
    {
        _files[prefix + "index"] = Path.Combine(home, "index.html");
        var site = Directory.GetDirectories(Path.Combine(home, "sites")).Single();
        _files[prefix + "sheet"] = Path.Combine(site, "reports", LastMorning, "report.html");
        foreach (var (name, pattern) in new[] { ("week", "week-*.html"), ("season", "season-*.html"), ("door cards", "door-card*.html") })
        {
            if (Directory.GetFiles(site, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal).LastOrDefault() is { } file)
            {
                _files[prefix + name] = file;
            }
        }
    }
}
