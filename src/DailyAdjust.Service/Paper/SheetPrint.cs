using System.Globalization;
using DailyAdjust.Reports;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Paper;

/// <summary>
/// report.pdf beside report.html: the same page printed. Derived and made after the sheet is out, so it is in no ledger, and no sheet waits for it. A print of an issue that was
/// replaced never stands beside the new one.
/// </summary>
internal static class SheetPrint
{
    /// <summary>Takes the print of a folder away: its page is about to change, or has changed. Never throws, for a sheet is being written.</summary>
    public static void Forget(string folder)
    {
        try
        {
            File.Delete(Path.Combine(folder, ReportFiles.Print));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // Somebody is reading it: the next print takes its place.
        }
    }

    /// <param name="folder">Of one date.</param>
    /// <returns>Whether the folder's page has no print yet, or an older one.</returns>
    public static bool IsDue(string folder)
    {
        var (page, print) = (new FileInfo(Path.Combine(folder, ReportFiles.Html)), new FileInfo(Path.Combine(folder, ReportFiles.Print)));
        return page.Exists && (!print.Exists || print.LastWriteTimeUtc < page.LastWriteTimeUtc);
    }

    /// <summary>Prints a folder's page.</summary>
    /// <returns>False = the page changed meanwhile, and what was printed is thrown away.</returns>
    /// <exception cref="IOException">It could not be printed, or not be written.</exception>
    /// <exception cref="UnauthorizedAccessException">No right to write there.</exception>
    public static async Task<bool> MakeAsync(string folder, PagePrint print, CancellationToken stop)
    {
        var page = Path.Combine(folder, ReportFiles.Html);
        var html = await File.ReadAllBytesAsync(page, stop).ConfigureAwait(false);
        var bytes = await print.OfAsync(html, DateOnly.ParseExact(Path.GetFileName(folder), "yyyy-MM-dd", CultureInfo.InvariantCulture), stop).ConfigureAwait(false);
        if (!IsStill(page, html))
        {
            return false;
        }

        AtomicFile.Write(Path.Combine(folder, ReportFiles.Print), bytes);
        if (IsStill(page, html))
        {
            return true;
        }

        Forget(folder);
        return false;
    }

    private static bool IsStill(string page, byte[] html) => File.Exists(page) && File.ReadAllBytes(page).AsSpan().SequenceEqual(html);
}
