using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>A morning in which, from one step on, every step that writes ends with an error: the old sheet and the ledger stay whole, and the next morning that may write is as if nothing had happened.</summary>
[Trait("Promise", "3")]
public sealed class FailingStepsTests
{
    /// <summary>ENOSPC, EDQUOT, EROFS, EACCES, EMFILE.</summary>
    private static readonly int[] Errors = [28, 122, 30, 13, 24];

    [Fact]
    public void Whatever_step_the_disk_refuses_from_on()
    {
        using var runs = new KilledRuns(SecondDay.Example.HomeWithInbox, home => ["morning", "--home", home.Path], 0);
        var writing = Enumerable.Range(1, runs.Log.Count).Where(i => runs.Log[i - 1].Split(' ')[1] is "write" or "rename" or "mkdir" or "sync" && runs.Steps[i - 1].Length > 0).ToList();
        var random = new Random(3);
        var refused = 0;
        for (var i = 0; i < Tried.Times(4, 250); i++)
        {
            var step = writing[random.Next(writing.Count)];
            refused += runs.Try(new Kill(step, 0) { Error = Errors[i % Errors.Length] });
        }

        Assert.True(refused > 0);
        Tried.Held(3, "morning refused by the disk from some step on", refused);
    }
}
