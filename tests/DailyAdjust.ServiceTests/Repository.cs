namespace DailyAdjust.ServiceTests;

/// <summary>The tree that the tests were built from.</summary>
public static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "DailyAdjust.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("DailyAdjust.sln stands in no folder above the tests.");
    }
}
