namespace DailyAdjust.Tests.Architecture;

/// <summary>The checkout that the tests run in.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "DailyAdjust.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("DailyAdjust.sln was not found above " + AppContext.BaseDirectory);
    }
}
