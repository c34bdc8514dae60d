using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Sites;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>A stations.csv with what was measured in it, not written yet.</summary>
internal sealed class MeasuredUpdate
{
    private readonly byte[] _old;
    private readonly byte[] _new;

    private MeasuredUpdate(byte[] old, byte[] changed, IReadOnlyList<CellChange> changes) => (_old, _new, Changes) = (old, changed, changes);

    public IReadOnlyList<CellChange> Changes { get; }

    /// <exception cref="InvalidDataException">The changed file would not say what was measured.</exception>
    public static MeasuredUpdate Of(DescriptionFiles files, Site site, IReadOnlyList<StationAudit> audits)
    {
        List<MeasuredStation> measured = [.. audits.Where(a => a.IsSound).Select(a => new MeasuredStation(a.Station.Key, a.Audit.RateMmPerHour, a.Audit.LowerQuarter))];
        IReadOnlyList<CellChange> changes = [];
        var bytes = DescriptionFiles.Edited(files.Stations, text =>
        {
            var edit = StationsEdit.Of(text, site, measured);
            changes = edit.Changes;
            return edit.Text;
        });
        CheckReadsBack(files.Yaml, bytes, measured);
        return new(files.Stations, bytes, changes);
    }

    /// <summary>Writes it, if there is anything to write.</summary>
    /// <exception cref="WrongInputException">Somebody else has changed the file in between.</exception>
    /// <exception cref="IOException">The disk refused; the old file is whole.</exception>
    public void Write(SiteFolder folder)
    {
        if (Changes.Count == 0)
        {
            return;
        }

        if (!DescriptionFiles.Of(folder).Stations.AsSpan().SequenceEqual(_old))
        {
            throw new WrongInputException($"{folder.StationsFile} was changed by somebody else just now.", "Nothing was stored. Run the command again.");
        }

        // A link stays a link: what it points to is written.
        AtomicFile.Write(File.ResolveLinkTarget(folder.StationsFile, returnFinalTarget: true)?.FullName ?? folder.StationsFile, _new);
    }

    /// <summary>A file that the next morning could not read would cost a sheet.</summary>
    private static void CheckReadsBack(byte[] yaml, byte[] stations, List<MeasuredStation> measured)
    {
        const double Rounding = 0.01;
        var reading = SiteReader.Read("site.yaml", DescriptionFiles.Decode(yaml), "stations.csv", DescriptionFiles.Decode(stations));
        var read = reading.Site?.Stations.ToDictionary(s => s.Key) ?? throw new InvalidDataException($"The changed stations.csv cannot be read: {reading.Problems[0]} Nothing was stored.");
        if (measured.Find(m => read[m.Station] is not { RateKnown: RateKnown.Measured } s
            || Math.Abs(s.Rate.MmPerHour - m.RateMmPerHour) > Rounding * m.RateMmPerHour
            || Math.Abs((s.DistributionUniformity ?? 0) - m.LowerQuarter) > Rounding * m.LowerQuarter) is { } wrong)
        {
            throw new InvalidDataException($"The changed stations.csv would not say what was measured at {wrong.Station}. Nothing was stored.");
        }
    }
}
