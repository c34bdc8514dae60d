using System.Text;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Mail;

/// <summary>The password of the mail account: from a variable of the environment, or from a file that nobody else can read. It is in no settings, log or ledger.</summary>
public static class MailPassword
{
    /// <summary>The variable that holds it.</summary>
    public const string Variable = "DAILYADJUST_MAIL_PASSWORD";

    private const int LargestFile = 4096;
    private const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute
        | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    /// <summary>Looked for anew at every call, so that a password that was put right works at once; the variable wins.</summary>
    /// <param name="mail">Names the file.</param>
    /// <param name="home">Where a relative name is looked for.</param>
    /// <param name="variable">Looks a variable up.</param>
    /// <exception cref="WrongInputException">There is none, or others can read it.</exception>
    public static string Of(MailOptions mail, HomeFolder home, Func<string, string?> variable)
    {
        if (variable(Variable) is { Length: > 0 } found)
        {
            return found;
        }

        return mail.PasswordFile.Length > 0
            ? FromFile(Path.Combine(home.Path, mail.PasswordFile))
            : throw new WrongInputException(
                $"Mail: the password of {mail.User} is missing.", $"Put it into the variable {Variable}, or into a file that only its owner can read and name that as PasswordFile.");
    }

    /// <summary>A text from outside without the password, should a server repeat it: as it is, and as a login sends it.</summary>
    public static string Scrub(string text, string user, string password)
    {
        string[] forms = [password, Base64(password), Base64($"\0{user}\0{password}")];
        return forms.Where(form => form.Length > 0).Aggregate(text, (clean, form) => clean.Replace(form, "(password)", StringComparison.Ordinal));
    }

    private static string FromFile(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            throw new WrongInputException($"Mail: {path} is not read: on Windows who else may read a file cannot be checked here.", $"Put the password into the variable {Variable}.");
        }

        if (!File.Exists(path))
        {
            throw new WrongInputException($"Mail: there is no password file {path}.", $"Write it, then: chmod 600 {path}");
        }

        if ((File.GetUnixFileMode(path) & Others) != UnixFileMode.None)
        {
            throw new WrongInputException($"Mail: the password file {path} is not used: others than its owner can read or change it.", $"Do: chmod 600 {path} - and change the password if somebody may have read it.");
        }

        var content = RegularFile.Read(path, LargestFile, followLinks: true);
        if (content.Bytes is null)
        {
            throw new WrongInputException(
                $"Mail: the password file {path} cannot be read: {(content.Trouble == FileTrouble.TooLarge ? "it is too large for a password." : content.Why)}", "It holds the password alone, and belongs to the user that the service runs as.");
        }

        var password = Encoding.UTF8.GetString(content.Bytes).TrimStart('\uFEFF').TrimEnd('\r', '\n');
        return password.Length > 0 && !password.Any(char.IsControl)
            ? password
            : throw new WrongInputException($"Mail: the password file {path} does not hold a password alone on one line.", "Write the password into it and nothing else.");
    }

    private static string Base64(string text) => Convert.ToBase64String(Encoding.UTF8.GetBytes(text));
}
