namespace DailyAdjust.Service.Demo;

/// <summary>Finds the demo course: beside the published program, or in the repository above it or above the working folder.</summary>
internal static class SampleWeather
{
    private const string Name = "sample-weather";

    /// <summary>The folder; null = nowhere.</summary>
    public static DirectoryInfo? Find() => Above(AppContext.BaseDirectory) ?? Above(Directory.GetCurrentDirectory());

    private static DirectoryInfo? Above(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
        {
            var sample = new DirectoryInfo(Path.Combine(at.FullName, Name));
            if (File.Exists(Path.Combine(sample.FullName, "site", "site.yaml")))
            {
                return sample;
            }
        }

        return null;
    }
}
