using DailyAdjust.ServiceTests.Promises.Records;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Together;

/// <summary>A second `serve` on one home.</summary>
[Trait("Promise", "6")]
public sealed class SecondServiceTests : IDisposable
{
    private readonly TestHome _home = new();

    public SecondServiceTests() => Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");

    public void Dispose() => _home.Dispose();

    [Fact]
    public void It_ends_with_1_and_says_who_runs_and_the_first_goes_on()
    {
        ExampleSite.TakenIn(_home);
        using var first = new ServiceOn(_home);
        ServiceOn.WaitFor("the first look", () => first.Said.Contains("work begins at", StringComparison.Ordinal));
        for (var time = 0; time < Tried.Times(2, 20); time++)
        {
            using var second = new ServiceOn(_home);
            Assert.Equal(1, second.End());
            Assert.Contains("runs on " + _home.Path, second.Said, StringComparison.Ordinal);
            Assert.Contains(FormattableString.Invariant($"process {first.Id}, dailyadjust serve"), second.Said, StringComparison.Ordinal);
        }

        Assert.Equal(0, first.Stop());
        Tried.Held(6, "second services refused", Tried.Times(2, 20));
    }

    [Fact]
    public void Of_two_that_start_at_once_one_runs()
    {
        ExampleSite.TakenIn(_home);
        for (var time = 0; time < Tried.Times(2, 20); time++)
        {
            using var one = new ServiceOn(_home);
            using var other = new ServiceOn(_home);
            ServiceOn.WaitFor("one of them to end", () => HasEnded(one) || HasEnded(other));
            var (ended, runs) = HasEnded(one) ? (one, other) : (other, one);
            Assert.Equal(1, ended.End());
            ServiceOn.WaitFor("the other to look", () => runs.Said.Contains("watching", StringComparison.Ordinal));
            Assert.Equal(0, runs.Stop());
        }

        Tried.Held(6, "services started at once", Tried.Times(2, 20));
    }

    [Fact]
    public void After_a_kill_the_next_one_starts()
    {
        ExampleSite.TakenIn(_home);
        using (var killed = new ServiceOn(_home))
        {
            ServiceOn.WaitFor("it to run", () => killed.Said.Contains("watching", StringComparison.Ordinal));
            killed.Kill();
        }

        using var next = new ServiceOn(_home);
        ServiceOn.WaitFor("the next to run", () => next.Said.Contains("watching", StringComparison.Ordinal));
        Assert.Equal(0, next.Stop());
    }

    private static bool HasEnded(ServiceOn service) => service.Said.Contains("A second one is not started", StringComparison.Ordinal);
}
