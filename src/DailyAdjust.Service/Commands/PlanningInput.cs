using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>What `plan`, `season` and `audit` rest on: the description as it stands in the folder now, taken in or not, and its normals.</summary>
internal static class PlanningInput
{
    /// <exception cref="WrongInputException">The description has errors, or no normals.</exception>
    public static (Site Site, MonthlyNormals Normals) Of(SiteFolder folder)
    {
        var site = SiteOf(DescriptionFiles.Of(folder));
        return site.Weather.Normals is { EtoMmPerDay: { Count: 12 } eto } normals && eto.Max() > 0
            ? (site, normals)
            : throw new WrongInputException($"{folder.Name}: site.yaml has no normals of reference ET above 0.", "`dailyadjust weather normals` makes them from your own days or from a typical year.");
    }

    /// <summary>The site as its files describe it.</summary>
    /// <exception cref="WrongInputException">The description has errors.</exception>
    public static Site SiteOf(DescriptionFiles files) => files.Reading.Site
        ?? throw new WrongInputException(files.Reading.Problems.First(p => p.Severity == Severity.Error).ToString(), "`dailyadjust check` lists every problem with its line and what to do.");
}
