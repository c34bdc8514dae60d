using DailyAdjust.Service.Hosting;

namespace DailyAdjust.Service.Commands;

/// <summary>`serve`: the background worker.</summary>
internal static class ServeCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time) => new AppCommand(
        "serve",
        "Runs in the background: polls the inboxes and has every site's sheet ready at its report hour.",
        "It runs until it is stopped (Ctrl-C, or the system's service manager) and then ends with 0; a failure never ends with 0.\nMornings that were slept over are recorded as missed; the newest one is issued. It writes HOME/logs and opens no port.",
        "serve",
        "serve --home /srv/dailyadjust --set PollSeconds=10")
        .Runs(global, time, (context, stop) => ServiceHost.RunAsync(context.Home, context.SiteName, context.Options, context.Time, stop));
}
