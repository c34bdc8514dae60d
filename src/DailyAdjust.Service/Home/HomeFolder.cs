namespace DailyAdjust.Service.Home;

/// <summary>Where everything of one installation lives: settings, sites, logs.</summary>
public sealed class HomeFolder(string path)
{
    /// <summary>The variable that names the home where --home does not.</summary>
    public const string Variable = "DAILYADJUST_HOME";

    /// <summary>A home of this name in the working folder is used without being named.</summary>
    public const string LocalName = "dailyadjust-home";

    public string Path { get; } = System.IO.Path.GetFullPath(path);

    public string SettingsFile => System.IO.Path.Combine(Path, "appsettings.json");

    /// <summary>The page over all sites.</summary>
    public string IndexFile => System.IO.Path.Combine(Path, Reports.AllSites.HtmlFile);

    /// <summary>Written when all mornings are done.</summary>
    public string HeartbeatFile => System.IO.Path.Combine(Path, "heartbeat.txt");

    public string SitesFolder => System.IO.Path.Combine(Path, "sites");

    public string LogsFolder => System.IO.Path.Combine(Path, "logs");

    /// <summary>Held by the one service that runs on this home.</summary>
    public string LockFile => System.IO.Path.Combine(Path, "serve.lock");

    /// <summary>A folder per user of this machine.</summary>
    public static string OfThisUser => System.IO.Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "dailyadjust");

    /// <summary>--home, else DAILYADJUST_HOME, else ./dailyadjust-home if it exists, else the folder of this user.</summary>
    public static HomeFolder Find(string? given)
    {
        var named = string.IsNullOrWhiteSpace(given) ? Environment.GetEnvironmentVariable(Variable) : given;
        if (!string.IsNullOrWhiteSpace(named))
        {
            return new(named);
        }

        return new(Directory.Exists(LocalName) ? LocalName : OfThisUser);
    }

    public SiteFolder Site(string name) => new(name, System.IO.Path.Combine(SitesFolder, name));

    /// <summary>Folders that hold a site.yaml or a ledger, and those that may not be looked into, in ordinal order of their names: a site does not vanish with its description.</summary>
    public IReadOnlyList<SiteFolder> Sites() => Directory.Exists(SitesFolder)
        ? [.. Directory.GetDirectories(SitesFolder)
            .Select(folder => Site(System.IO.Path.GetFileName(folder)))
            .Where(site => File.Exists(site.SiteFile) || File.Exists(site.LedgerFile) || !MayBeLookedInto(site.Path))
            .OrderBy(site => site.Name, StringComparer.Ordinal)]
        : [];

    private static bool MayBeLookedInto(string folder)
    {
        try
        {
            _ = Directory.EnumerateFileSystemEntries(folder).Any();
            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
        catch (DirectoryNotFoundException)
        {
            return true; // taken away meanwhile
        }
    }
}
