using System.CommandLine;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Commands;

/// <summary>What a command works with.</summary>
public sealed record CommandContext
{
    public required ParseResult Parsed { get; init; }

    public required HomeFolder Home { get; init; }

    public required ServiceOptions Options { get; init; }

    /// <summary>--site as given.</summary>
    public required string? SiteName { get; init; }

    /// <summary>--date as given.</summary>
    public required DateOnly? Date { get; init; }

    public required TextWriter Out { get; init; }

    public required TextWriter Error { get; init; }

    public required TimeProvider Time { get; init; }

    /// <summary>The named site, or all of them.</summary>
    /// <exception cref="WrongInputException">There is no such site, or none at all.</exception>
    public IReadOnlyList<SiteFolder> Sites()
    {
        var sites = Home.Sites();
        if (sites.Count == 0)
        {
            throw new WrongInputException($"There is no site in {Home.Path}.", "`dailyadjust new` sets one up; --home names another home folder.");
        }

        if (SiteName is null)
        {
            return sites;
        }

        return sites.FirstOrDefault(s => string.Equals(s.Name, SiteName, StringComparison.Ordinal)) is { } site
            ? [site]
            : throw new WrongInputException($"There is no site \"{SiteName}\" in {Home.Path}.", $"Sites there: {Names(sites)}.");
    }

    /// <summary>The named site, or the only one.</summary>
    /// <exception cref="WrongInputException">None, or several and none was named.</exception>
    public SiteFolder OneSite()
    {
        var sites = Sites();
        return sites.Count == 1
            ? sites[0]
            : throw new WrongInputException($"{Home.Path} holds {sites.Count} sites: say which.", $"--site with one of: {Names(sites)}.");
    }

    /// <summary>All bytes of a file that was named.</summary>
    /// <exception cref="WrongInputException">It cannot be read, or is too large.</exception>
    public byte[] ReadFile(string path)
    {
        var content = RegularFile.Read(path, Options.LargestFileMegabytes * 1_000_000L, followLinks: true);
        return content.Bytes ?? throw new WrongInputException($"{path}: {content.Why}");
    }

    private static string Names(IReadOnlyList<SiteFolder> sites) => string.Join(", ", sites.Select(s => s.Name));
}
