using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Commands;

/// <summary>
/// A command's work on several sites: as many at a time as there are processors, beside those that wait for a server. What each has to say is printed in the order of the sites, as soon as those before
/// it have spoken; one site's failure does not stop the others, but for a failing disk.
/// </summary>
/// <param name="context">The command's.</param>
/// <param name="log">Is told of failures.</param>
internal sealed class SiteRuns(CommandContext context, ILogger log)
{
    /// <summary>Servers that are waited for at a time.</summary>
    private const int MostAtATime = 16;

    private readonly Lock _printing = new();
    private readonly List<SiteFolder> _done = [];
    private string?[] _said = [];
    private string?[] _complaints = [];
    private int _printed;

    /// <summary>Worked on without failure, in the order of the sites.</summary>
    public IReadOnlyList<SiteFolder> Done => [.. _done.OrderBy(s => s.Name, StringComparer.Ordinal)];

    /// <summary>The worst.</summary>
    public int Code { get; private set; } = ExitCode.Done;

    /// <summary>A disk failed and nothing more may be written, or somebody stopped it.</summary>
    public bool IsCutShort { get; private set; }

    /// <param name="sites">In the order in which they speak.</param>
    /// <param name="work">What is done with each; it writes to the context that it is given, and asks for its turn before it calculates.</param>
    public SiteRuns All(IReadOnlyList<SiteFolder> sites, Func<CommandContext, SiteFolder, Func<Task<IDisposable>>, Task> work)
    {
        _said = new string?[sites.Count];
        _complaints = new string?[sites.Count];
        using var turns = new SemaphoreSlim(Environment.ProcessorCount);
        using var stop = new CancellationTokenSource();
        var limits = new ParallelOptions { MaxDegreeOfParallelism = MostAtATime, CancellationToken = stop.Token };
        try
        {
            Parallel.ForEachAsync(Enumerable.Range(0, sites.Count), limits, async (i, _) =>
            {
                using var said = new StringWriter();
                using var complaints = new StringWriter();
                await OneAsync(context with { Out = said, Error = complaints }, sites[i], work, turns, stop).ConfigureAwait(false);
                Print(i, said.ToString(), complaints.ToString());
            }).GetAwaiter().GetResult();
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // A disk failed, or somebody stopped it: sites that had not begun were left alone.
        }

        PrintRest();
        return this;
    }

    private async Task OneAsync(CommandContext mine, SiteFolder folder, Func<CommandContext, SiteFolder, Func<Task<IDisposable>>, Task> work, SemaphoreSlim turns, CancellationTokenSource stop)
    {
        try
        {
            await work(mine, folder, async () =>
            {
                await turns.WaitAsync(stop.Token).ConfigureAwait(false);
                return new Turn(turns);
            }).ConfigureAwait(false);
            lock (_printing)
            {
                _done.Add(folder);
            }
        }
        catch (OperationCanceledException)
        {
            if (!stop.IsCancellationRequested)
            {
                mine.Error.WriteLine($"{folder.Name}: stopped while its page was printed; the sheet is there.");
            }

            Fail(ExitCode.Failed, cutShort: true, stop);
        }
        catch (Exception failure) when (failure is WrongInputException or LedgerException or IOException or UnauthorizedAccessException)
        {
            // Most failures name their site themselves.
            var named = failure.Message.StartsWith(folder.Name + ": ", StringComparison.Ordinal);
            mine.Error.WriteLine(named ? failure.Message : $"{folder.Name}: {DiskTrouble.InWords(failure)}");
            mine.Error.WriteLine((failure as WrongInputException)?.Hint ?? "Nothing was issued for this site.");
            log.LogError(failure, "{Site}: {Failure}", folder.Name, DiskTrouble.InWords(failure));
            Fail(failure is WrongInputException ? ExitCode.WrongInput : ExitCode.Failed, cutShort: DiskTrouble.IsFailed(failure), stop);
        }
    }

    private void Fail(int code, bool cutShort, CancellationTokenSource stop)
    {
        lock (_printing)
        {
            (Code, IsCutShort) = (Math.Max(Code, code), IsCutShort || cutShort);
        }

        if (cutShort)
        {
            stop.Cancel();
        }
    }

    private void Print(int index, string said, string complaints)
    {
        lock (_printing)
        {
            (_said[index], _complaints[index]) = (said, complaints);
            while (_printed < _said.Length && _said[_printed] is not null)
            {
                PrintOne(_printed++);
            }
        }
    }

    /// <summary>After a stop, those behind a site that had not begun.</summary>
    private void PrintRest()
    {
        for (; _printed < _said.Length; _printed++)
        {
            PrintOne(_printed);
        }
    }

    private void PrintOne(int index)
    {
        context.Error.Write(_complaints[index]);
        context.Out.Write(_said[index]);
    }

    private sealed class Turn(SemaphoreSlim turns) : IDisposable
    {
        public void Dispose() => turns.Release();
    }
}
