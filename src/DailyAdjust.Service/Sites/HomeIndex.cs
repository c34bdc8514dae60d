using System.Text;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Index;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>HOME/index.html: all sites today, and their past days.</summary>
public sealed class HomeIndex(HomeFolder home, ILogger log)
{
    private readonly Lock _oneAtATime = new();

    /// <summary>
    /// Writes the page anew where its bytes change. Throws of a failing disk alone: the sheets that it leads to are written, and a page that cannot be is no reason to
    /// hold a site.
    /// </summary>
    /// <exception cref="DiskFailedException">Nothing more may be written.</exception>
    public void Write()
    {
        try
        {
            lock (_oneAtATime)
            {
                var page = Encoding.UTF8.GetBytes(AllSites.Html(Sites()));
                if (!File.Exists(home.IndexFile) || !page.AsSpan().SequenceEqual(File.ReadAllBytes(home.IndexFile)))
                {
                    AtomicFile.Write(home.IndexFile, page);
                }
            }
        }
        catch (Exception failure) when (!DiskTrouble.IsFailed(failure))
        {
            log.LogError(failure, "{File} could not be written: {Failure}", home.IndexFile, failure.Message);
        }
    }

    private IndexSite[] Sites()
    {
        var folders = home.Sites();
        var sites = new IndexSite[folders.Count];
        try
        {
            Parallel.For(0, folders.Count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i => sites[i] = IndexBook.Of(folders[i]));
        }
        catch (AggregateException several)
        {
            throw several.InnerExceptions.FirstOrDefault(DiskTrouble.IsFailed) ?? several.InnerExceptions[0];
        }

        return sites;
    }
}
