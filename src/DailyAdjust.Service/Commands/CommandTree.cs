using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Commands;

/// <summary>All commands, and the one place where an error becomes an exit code.</summary>
public static class CommandTree
{
    /// <param name="args">The command line.</param>
    /// <param name="output">What was asked for.</param>
    /// <param name="error">Everything else.</param>
    /// <param name="time">The clock.</param>
    /// <returns>See <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error, TimeProvider time)
    {
        // A note may begin with @: no word of the command line is a file to be read for more words.
        var parsed = Build(time).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0 && parsed.Action is not HelpWithExamples)
        {
            foreach (var problem in parsed.Errors)
            {
                await error.WriteLineAsync(problem.Message).ConfigureAwait(false);
            }

            await error.WriteLineAsync($"See: dailyadjust {PathOf(parsed.CommandResult.Command)}--help").ConfigureAwait(false);
            return ExitCode.WrongInput;
        }

        // The worker's host listens for the signals itself; a command may be stopped anywhere without losing anything.
        return await parsed.InvokeAsync(new InvocationConfiguration
        {
            Output = output,
            Error = error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = null,
        }).ConfigureAwait(false);
    }

    /// <summary>Gives a command its action.</summary>
    internal static AppCommand Runs(this AppCommand command, GlobalOptions global, TimeProvider time, Func<CommandContext, CancellationToken, Task<int>> action)
    {
        command.SetAction((parsed, cancel) => GuardAsync(parsed, global, time, action, cancel));
        return command;
    }

    /// <summary>Gives a command an action that does not wait for anything.</summary>
    internal static AppCommand Runs(this AppCommand command, GlobalOptions global, TimeProvider time, Func<CommandContext, int> action) =>
        command.Runs(global, time, (context, _) => Task.FromResult(action(context)));

    private static RootCommand Build(TimeProvider time)
    {
        var global = new GlobalOptions();
        var root = new RootCommand("Morning percentage and skip advice for stand-alone irrigation controllers: weather in, a round sheet out; a person carries every number.")
        {
            global.Home,
            global.Site,
            global.Date,
            global.Set,
            DemoCommand.Create(global, time),
            NewCommand.Create(global, time),
            ServeCommand.Create(global, time),
            MorningCommand.Create(global, time),
            CheckCommand.Create(global, time),
            IngestCommand.Create(global, time),
            LogCommand.Create(global, time),
            WeatherCommand.Create(global, time),
            BalanceCommand.Create(global, time),
            AdviceCommand.Create(global, time),
            VisitsCommand.Create(global, time),
            SummaryCommand.Create(global, time),
            ExplainCommand.Create(global, time),
            ReplayCommand.Create(global, time),
            PlanCommand.Create(global, time),
            SeasonCommand.Create(global, time),
            DoorCardCommand.Create(global, time),
            AuditCommand.Create(global, time),
            MailCommand.Create(global, time),
            BackupCommand.Create(global, time),
            RestoreCommand.Create(global, time),
            DoctorCommand.Create(global, time),
        };
        foreach (var help in root.Options.OfType<HelpOption>())
        {
            help.Action = new HelpWithExamples((SynchronousCommandLineAction)help.Action!);
        }

        return root;
    }

    private static async Task<int> GuardAsync(
        ParseResult parsed, GlobalOptions global, TimeProvider time, Func<CommandContext, CancellationToken, Task<int>> action, CancellationToken cancel)
    {
        var error = parsed.InvocationConfiguration.Error;
        try
        {
            var home = HomeFolder.Find(parsed.GetValue(global.Home));
            var context = new CommandContext
            {
                Parsed = parsed,
                Home = home,
                Options = ServiceSettings.Read(home, parsed.GetValue(global.Set) ?? []),
                SiteName = parsed.GetValue(global.Site),
                Date = parsed.GetValue(global.Date),
                Out = parsed.InvocationConfiguration.Output,
                Error = error,
                Time = time,
            };
            return await action(context, cancel).ConfigureAwait(false);
        }
        catch (WrongInputException wrong)
        {
            await error.WriteLineAsync(wrong.Message).ConfigureAwait(false);
            if (wrong.Hint.Length > 0)
            {
                await error.WriteLineAsync(wrong.Hint).ConfigureAwait(false);
            }

            return ExitCode.WrongInput;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or LedgerException or InvalidDataException)
        {
            await error.WriteLineAsync($"Failed: {DiskTrouble.InWords(failure)}").ConfigureAwait(false);
            return ExitCode.Failed;
        }
    }

    private static string PathOf(Command command) => command is RootCommand
        ? ""
        : string.Concat(command.Parents.OfType<Command>().Select(PathOf)) + command.Name + " ";
}
