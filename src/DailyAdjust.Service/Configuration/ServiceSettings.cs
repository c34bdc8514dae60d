using System.ComponentModel.DataAnnotations;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Mail;
using Microsoft.Extensions.Configuration;

namespace DailyAdjust.Service.Configuration;

/// <summary>
/// Reads the settings: appsettings.json of the home, then DAILYADJUST_ variables, then --set of the command line; the later wins.
/// A key that nobody knows is an error, never dropped.
/// </summary>
public static class ServiceSettings
{
    /// <summary>DAILYADJUST_POLLSECONDS=10 sets PollSeconds.</summary>
    public const string VariablePrefix = "DAILYADJUST_";

    /// <exception cref="WrongInputException">An unknown key, a value of the wrong kind or beyond its limits, a file that is not JSON.</exception>
    public static ServiceOptions Read(HomeFolder home, IReadOnlyList<string> given)
    {
        try
        {
            var configuration = new ConfigurationBuilder()
                .AddJsonFile(home.SettingsFile, optional: true, reloadOnChange: false)
                .AddInMemoryCollection(Variables())
                .AddInMemoryCollection(given.Select(Given))
                .Build();
            RejectOtherSections(configuration, home.SettingsFile);
            RejectPassword(configuration);
            var options = configuration.GetSection(ServiceOptions.Section)
                .Get<ServiceOptions>(binder => binder.ErrorOnUnknownConfiguration = true) ?? new ServiceOptions();
            Validator.ValidateObject(options, new ValidationContext(options), validateAllProperties: true);
            if (options.PingUrl.Length > 0 && options.PingAddress is null)
            {
                throw new WrongInputException("Settings: PingUrl is not an address that begins with https:// or http://.", Where(home));
            }

            var wrong = options.Mail is { } mail ? MailCheck.Problems(mail) : [];
            return wrong.Count == 0 ? options : throw new WrongInputException($"Settings: Mail: {string.Join("\nSettings: Mail: ", wrong)}", $"{Where(home)} docs/mail.md explains mail.");
        }
        catch (ValidationException error)
        {
            throw new WrongInputException($"Settings: {error.Message}", Where(home));
        }
        catch (Exception error) when (error is InvalidOperationException or InvalidDataException or FormatException)
        {
            throw new WrongInputException($"Settings: {Innermost(error)}", Where(home));
        }
    }

    private static string Where(HomeFolder home) =>
        $"Look at {home.SettingsFile}, at variables that begin with {VariablePrefix}, and at --set. docs/configuration.md explains every key.";

    private static string Innermost(Exception error) =>
        error.InnerException is { } inner ? $"{error.Message} {Innermost(inner)}" : error.Message;

    private static void RejectOtherSections(IConfigurationRoot configuration, string file)
    {
        var others = configuration.GetChildren()
            .Select(section => section.Key)
            .Where(key => !string.Equals(key, ServiceOptions.Section, StringComparison.OrdinalIgnoreCase))
            .ToList();
        if (others.Count > 0)
        {
            throw new WrongInputException(
                $"{file}: the key \"{others[0]}\" is not known.", $"All settings stand under \"{ServiceOptions.Section}\".");
        }
    }

    private static void RejectPassword(IConfigurationRoot configuration)
    {
        if (configuration[$"{ServiceOptions.Section}:{nameof(ServiceOptions.Mail)}:Password"] is not null)
        {
            throw new WrongInputException(
                "Settings: Mail: a password does not belong into settings or on a command line, where others can read it.",
                $"Put it into the variable {MailPassword.Variable}, or into a file that only its owner can read and name that as PasswordFile. docs/mail.md explains mail.");
        }
    }

    private static bool IsSetting(string variable) =>
        !string.Equals(variable, HomeFolder.Variable, StringComparison.OrdinalIgnoreCase) && !string.Equals(variable, MailPassword.Variable, StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<KeyValuePair<string, string?>> Variables() =>
        new ConfigurationBuilder().AddEnvironmentVariables(VariablePrefix).Build()
            .AsEnumerable()
            .Where(pair => pair.Value is not null && IsSetting(VariablePrefix + pair.Key))
            .Select(pair => KeyValuePair.Create($"{ServiceOptions.Section}:{pair.Key}", pair.Value));

    private static KeyValuePair<string, string?> Given(string assignment)
    {
        var at = assignment.IndexOf('=', StringComparison.Ordinal);
        return at > 0
            ? KeyValuePair.Create($"{ServiceOptions.Section}:{assignment[..at].Trim()}", (string?)assignment[(at + 1)..].Trim())
            : throw new WrongInputException($"--set {assignment}: a value is missing.", "Write it as --set PollSeconds=10.");
    }
}
