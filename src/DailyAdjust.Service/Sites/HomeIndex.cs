using System.Text;
using DailyAdjust.Reports;
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
                var page = Encoding.UTF8.GetBytes(AllSites.Html([.. home.Sites().Select(IndexBook.Of)]));
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
}
