using DailyAdjust.Fuzz;
using DailyAdjust.Fuzz.Processes;

// Inputs made from seeds, each read in a child process that notes first which one it takes up.
//   --count N   how many inputs (20000)
//   --seed S    of the whole run (1); the same seed gives the same inputs on any machine
//   --only I    this one alone, in this process: its bytes are kept in a file and shown
//   --target T  inputs of this target alone ("site", "logbook", "weather gsod", ...)
if (FuzzOptions.Parse(args, out var options) is { } fault)
{
    await Console.Error.WriteLineAsync(fault);
    return 2;
}

return options switch
{
    { Note: { } note } => Child.Run(options, note),
    { Only: { } only } => Alone.Run(options, only),
    _ => Parent.Run(options),
};
