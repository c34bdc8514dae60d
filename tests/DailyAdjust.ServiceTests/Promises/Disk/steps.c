/* Preloaded into the program: counts what it asks of the disk below one folder (and what it sends to a server), writes each step to a file, and at one step kills the
 * process as a power cut would, before the step is done, or lets it fail. It can also set the process's own clock, so that two runs see the same morning.
 *   STEPS_UNDER   the folder; what lies in its logs/ is not counted
 *   STEPS_LOG     a line per step: "number call path"
 *   STEPS_AT      the number of the step; 0 = none
 *   STEPS_ERROR   errno that the step ends with, and every later one that writes; unset = the process is killed
 *   STEPS_CLOCK   seconds since 1970 that the process begins at
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/time.h>
#include <time.h>
#include <unistd.h>

static const char *under;
static size_t under_length;
static long at;
static int fails_with, log_file = -1;
static atomic_long done;
static long long clock_offset;

#define REAL(name) ({ static __typeof__(&name) real; if (!real) real = (__typeof__(&name))dlsym(RTLD_NEXT, #name); real; })

__attribute__((constructor)) static void begin(void)
{
    const char *text = getenv("STEPS_CLOCK");
    if (text) {
        struct timespec now;
        syscall(SYS_clock_gettime, CLOCK_REALTIME, &now);
        clock_offset = atoll(text) - now.tv_sec;
    }
    under = getenv("STEPS_UNDER");
    under_length = under ? strlen(under) : 0;
    at = (text = getenv("STEPS_AT")) ? atol(text) : 0;
    fails_with = (text = getenv("STEPS_ERROR")) ? atoi(text) : 0;
    if (under && (text = getenv("STEPS_LOG")))
        log_file = syscall(SYS_openat, AT_FDCWD, text, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0644);
}

/* 0 = go on; otherwise the errno to end with. */
static int step(const char *call, const char *path, int writes)
{
    if (!under || strncmp(path, under, under_length) != 0 || path[under_length] != '/' || strncmp(path + under_length, "/logs", 5) == 0)
        return 0;
    long number = atomic_fetch_add(&done, 1) + 1;
    if (log_file >= 0) {
        char line[4400];
        int length = snprintf(line, sizeof line, "%ld %s %s\n", number, call, path + under_length + 1);
        syscall(SYS_write, log_file, line, length);
    }
    if (!at || number < at || (number > at && !(fails_with && writes)))
        return 0;
    if (fails_with)
        return fails_with;
    syscall(SYS_kill, getpid(), SIGKILL);
    for (;;) pause();
}

static int step_at(const char *call, const char *path, int writes)
{
    return path[0] == '/' ? step(call, path, writes) : 0;
}

static int step_of(const char *call, int file, int writes)
{
    char link[40], path[4200];
    snprintf(link, sizeof link, "/proc/self/fd/%d", file);
    ssize_t length = readlink(link, path, sizeof path - 1);
    if (length <= 0)
        return 0;
    path[length] = 0;
    return step(call, path, writes);
}

#define OR_FAIL(check, result) do { int failed = (check); if (failed) { errno = failed; return result; } } while (0)
#define OPEN(name) \
    int name(const char *path, int flags, ...) \
    { \
        mode_t mode = 0; \
        if (flags & (O_CREAT | O_TMPFILE)) { va_list rest; va_start(rest, flags); mode = va_arg(rest, mode_t); va_end(rest); } \
        OR_FAIL(step_at("open", path, flags & O_CREAT), -1); \
        return REAL(name)(path, flags, mode); \
    }
OPEN(open)
OPEN(open64)

ssize_t write(int file, const void *bytes, size_t count) { OR_FAIL(step_of("write", file, 1), -1); return REAL(write)(file, bytes, count); }
ssize_t pwrite(int file, const void *bytes, size_t count, off_t where) { OR_FAIL(step_of("write", file, 1), -1); return REAL(pwrite)(file, bytes, count, where); }
ssize_t pwrite64(int file, const void *bytes, size_t count, off64_t where) { OR_FAIL(step_of("write", file, 1), -1); return REAL(pwrite64)(file, bytes, count, where); }
int ftruncate(int file, off_t length) { OR_FAIL(step_of("truncate", file, 0), -1); return REAL(ftruncate)(file, length); }
int ftruncate64(int file, off64_t length) { OR_FAIL(step_of("truncate", file, 0), -1); return REAL(ftruncate64)(file, length); }
int fsync(int file) { OR_FAIL(step_of("sync", file, 1), -1); return REAL(fsync)(file); }
int fdatasync(int file) { OR_FAIL(step_of("sync", file, 1), -1); return REAL(fdatasync)(file); }
int rename(const char *from, const char *to) { OR_FAIL(step_at("rename", to, 1), -1); return REAL(rename)(from, to); }
int link(const char *from, const char *to) { OR_FAIL(step_at("link", to, 1), -1); return REAL(link)(from, to); }
int unlink(const char *path) { OR_FAIL(step_at("unlink", path, 0), -1); return REAL(unlink)(path); }
int mkdir(const char *path, mode_t mode) { OR_FAIL(step_at("mkdir", path, 1), -1); return REAL(mkdir)(path, mode); }

/* Only of what came in: the ledger's pages are read by the thousand. */
static int reads(int file)
{
    char link[40], path[4200];
    snprintf(link, sizeof link, "/proc/self/fd/%d", file);
    ssize_t length = readlink(link, path, sizeof path - 1);
    if (length <= 0)
        return 0;
    path[length] = 0;
    return strstr(path, "/inbox/") || strstr(path, "/files/") ? step("read", path, 0) : 0;
}

ssize_t pread(int file, void *bytes, size_t count, off_t where) { OR_FAIL(reads(file), -1); return REAL(pread)(file, bytes, count, where); }
ssize_t pread64(int file, void *bytes, size_t count, off64_t where) { OR_FAIL(reads(file), -1); return REAL(pread64)(file, bytes, count, where); }

/* What goes to a server is a step of its own name. */
static int sends(int file)
{
    struct sockaddr_storage other;
    socklen_t length = sizeof other;
    if (getpeername(file, (struct sockaddr *)&other, &length) != 0 || (other.ss_family != AF_INET && other.ss_family != AF_INET6) || !under)
        return 0;
    char path[4200];
    snprintf(path, sizeof path, "%s/(server)", under);
    return step("send", path, 0);
}

ssize_t send(int file, const void *bytes, size_t count, int flags) { OR_FAIL(sends(file), -1); return REAL(send)(file, bytes, count, flags); }
ssize_t sendmsg(int file, const struct msghdr *message, int flags) { OR_FAIL(sends(file), -1); return REAL(sendmsg)(file, message, flags); }

int clock_gettime(clockid_t which, struct timespec *time)
{
    int result = syscall(SYS_clock_gettime, which, time);
    if (result == 0 && (which == CLOCK_REALTIME || which == CLOCK_REALTIME_COARSE))
        time->tv_sec += clock_offset;
    return result;
}

int gettimeofday(struct timeval *restrict time, void *restrict zone)
{
    struct timespec now;
    (void)zone;
    clock_gettime(CLOCK_REALTIME, &now);
    time->tv_sec = now.tv_sec;
    time->tv_usec = now.tv_nsec / 1000;
    return 0;
}
