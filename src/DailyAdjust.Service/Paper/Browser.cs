using DailyAdjust.Service.Configuration;

namespace DailyAdjust.Service.Paper;

/// <summary>The installed Chromium, or a browser made from it, that prints a page as PDF.</summary>
internal static class Browser
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge", "microsoft-edge"];

    /// <summary>Its program; null = none is installed, or none is wanted.</summary>
    /// <param name="pdf">The setting `Pdf`.</param>
    public static string? Find(string pdf) => pdf switch
    {
        ServiceOptions.Never => null,
        ServiceOptions.Auto => Folders().SelectMany(folder => Names.Select(name => Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name))).FirstOrDefault(File.Exists),
        _ => File.Exists(pdf) ? pdf : null,
    };

    private static string[] Folders() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
