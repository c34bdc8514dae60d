namespace DailyAdjust.ServiceTests.Promises;

/// <summary>
/// A wall clock that only the processes see that are started with it: moved by as much as the test says while they run. Their monotonic clock, and every
/// other process's, goes on as it did.
/// </summary>
internal sealed class MovedClock : IDisposable
{
    private const string Code =
        """
        #define _GNU_SOURCE
        #include <fcntl.h>
        #include <stdlib.h>
        #include <sys/mman.h>
        #include <sys/syscall.h>
        #include <sys/time.h>
        #include <time.h>
        #include <unistd.h>

        static volatile long long *moved_by;

        __attribute__((constructor)) static void begin(void)
        {
            const char *name = getenv("MOVED_CLOCK");
            int file = name ? open(name, O_RDONLY | O_CLOEXEC) : -1;
            void *page = file < 0 ? MAP_FAILED : mmap(0, sizeof(long long), PROT_READ, MAP_SHARED, file, 0);
            if (file >= 0) close(file);
            if (page != MAP_FAILED) moved_by = page;
        }

        int clock_gettime(clockid_t id, struct timespec *t)
        {
            int result = (int)syscall(SYS_clock_gettime, id, t);
            if (result == 0 && moved_by && (id == CLOCK_REALTIME || id == CLOCK_REALTIME_COARSE)) t->tv_sec += *moved_by;
            return result;
        }

        int gettimeofday(struct timeval *t, void *zone)
        {
            struct timespec now;
            int result = clock_gettime(CLOCK_REALTIME, &now);
            (void)zone;
            t->tv_sec = now.tv_sec;
            t->tv_usec = now.tv_nsec / 1000;
            return result;
        }

        time_t time(time_t *t)
        {
            struct timespec now;
            clock_gettime(CLOCK_REALTIME, &now);
            if (t) *t = now.tv_sec;
            return now.tv_sec;
        }

        """;

    private static readonly Lazy<string> Library = new(() => NativeShim.Compile("moved-clock", Code));

    private readonly string _file = Path.GetTempFileName();

    /// <param name="now">What the clock shows at first, UTC.</param>
    public MovedClock(DateTimeOffset now) => Set(now);

    /// <summary>Variables of the environment for a process that sees it.</summary>
    public IReadOnlyDictionary<string, string> Variables => new Dictionary<string, string>(StringComparer.Ordinal) { ["LD_PRELOAD"] = Library.Value, ["MOVED_CLOCK"] = _file };

    /// <summary>Sets it, UTC, to the time or up to a second later; it goes on from there.</summary>
    public void Set(DateTimeOffset now)
    {
        using var stream = new FileStream(_file, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        stream.Write(BitConverter.GetBytes((long)Math.Ceiling((now - DateTimeOffset.UtcNow).TotalSeconds)));
    }

    public void Dispose() => File.Delete(_file);
}
