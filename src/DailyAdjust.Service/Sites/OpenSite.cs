using System.Collections.Concurrent;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Sites;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>One site opened: its folder, its ledger, and the versions of its description. For one thread at a time.</summary>
public sealed class OpenSite : IDisposable
{
    /// <summary>Descriptions by hash: a service that looks every half minute reads each once.</summary>
    private static readonly ConcurrentDictionary<string, Site> Read = new(StringComparer.Ordinal);

    private OpenSite(SiteFolder folder, SiteLedger ledger)
    {
        Folder = folder;
        Ledger = ledger;
        Reload();
    }

    public SiteFolder Folder { get; }

    public SiteLedger Ledger { get; }

    /// <summary>The texts that hold, by first date.</summary>
    public IReadOnlyList<SiteText> Texts { get; private set; } = [];

    /// <summary>The same as sites; empty = no description was taken in yet.</summary>
    public IReadOnlyList<SiteVersion> Versions { get; private set; } = [];

    /// <summary>The newest version.</summary>
    /// <exception cref="WrongInputException">None was taken in yet.</exception>
    public Site Newest => Versions.Count > 0
        ? Versions[^1].Site
        : throw new WrongInputException($"{Folder.Name}: its description was never read without errors.", "`dailyadjust check` says what is wrong with site.yaml and stations.csv.");

    /// <exception cref="LedgerException">The disk or another process stands in the way; Missing where there is none to read.</exception>
    public static OpenSite Open(SiteFolder folder, LedgerMode mode)
    {
        var ledger = SiteLedger.Open(folder.LedgerFile, mode);
        try
        {
            return new OpenSite(folder, ledger);
        }
        catch
        {
            ledger.Dispose();
            throw;
        }
    }

    /// <summary>Reads the versions anew after one was added.</summary>
    public void Reload()
    {
        Texts = Ledger.SiteVersions.Effective();
        Versions = ToSites(Texts);
    }

    /// <summary>The versions that held when this input was the newest.</summary>
    public IReadOnlyList<SiteVersion> VersionsUpTo(long watermark) => ToSites(Ledger.SiteVersions.Effective(watermark));

    /// <summary>Every version that was ever taken in, in that order.</summary>
    public IReadOnlyList<SiteVersion> History() => ToSites(Ledger.SiteVersions.History());

    public void Dispose() => Ledger.Dispose();

    private IReadOnlyList<SiteVersion> ToSites(IReadOnlyList<SiteText> texts) => [.. texts.Select(text => new SiteVersion(text.From, ToSite(text)))];

    private Site ToSite(SiteText text) => Read.GetOrAdd(text.Sha, _ =>
    {
        var reading = SiteReader.Read("site.yaml", DescriptionFiles.Decode(text.Site), "stations.csv", DescriptionFiles.Decode(text.Stations));
        return reading.Site ?? throw new InvalidDataException(
            FormattableString.Invariant($"{Folder.Name}: the description that holds from {text.From:yyyy-MM-dd} was good when it was taken in and cannot be read by this program: {reading.Problems[0]}"));
    });
}
