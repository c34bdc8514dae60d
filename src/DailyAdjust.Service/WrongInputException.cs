namespace DailyAdjust.Service;

/// <summary>What a person gave cannot be used: ends a command with exit code 2, with the place in the message and what to do in the hint.</summary>
public sealed class WrongInputException : Exception
{
    public WrongInputException()
    {
    }

    public WrongInputException(string message)
        : base(message)
    {
    }

    public WrongInputException(string message, string hint)
        : base(message) => Hint = hint;

    public WrongInputException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    public string Hint { get; } = "";
}
