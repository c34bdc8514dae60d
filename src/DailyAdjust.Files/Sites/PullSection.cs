using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>pull: where a source's files are fetched from, how often, and how much is waited for.</summary>
internal static class PullSection
{
    private const double BytesPerMB = 1e6;

    /// <param name="section">The keys.</param>
    /// <param name="files">The source's file pattern: the default name comes of it.</param>
    public static Pull Read(Section section, string files)
    {
        var url = section.NeedText("url", "\"https://example.org/yard-{yyyyMMdd}.csv\"");
        var pull = new Pull
        {
            Url = url,
            File = section.Text("file", files.Replace("*", PullNames.HasDate(url) ? "pulled-{yyyyMMdd}" : "pulled", StringComparison.Ordinal).Replace('?', '0')),
            Every = TimeSpan.FromMinutes(section.NeedQuantity("every", UnitKind.Duration, new(1, 1440), "30 min")),
            DaysBack = section.Whole("days_back", 0, 30) ?? 0,
            Headers = Headers(section),
            Timeout = TimeSpan.FromMinutes(section.Quantity("timeout", UnitKind.Duration, new(1.0 / 60, 10)) ?? 0.5),
            LargestBytes = (long)((section.Quantity("largest", UnitKind.Data, new(0.001, 1000)) ?? 20) * BytesPerMB),
        };
        section.Done();
        Check(pull, files, section);
        return pull;
    }

    private static List<KeyValuePair<string, string>> Headers(Section section)
    {
        if (section.Find("headers") is not { } node)
        {
            return [];
        }

        if (node is not YamlMap map)
        {
            section.Problems.Error(node.Line, node.Column, $"{section.NameOf("headers")} is not a map", "write it as { Authorization: \"Bearer ${STATION_TOKEN}\" }");
            return [];
        }

        var headers = new List<KeyValuePair<string, string>>();
        foreach (var (key, value) in map.Entries)
        {
            if (Values.Text(value, $"{section.NameOf("headers")}.{key.Value}", section.Problems) is { } text)
            {
                headers.Add(KeyValuePair.Create(key.Value.Trim(), text.Value));
            }
        }

        return headers;
    }

    private static void Check(Pull pull, string files, Section section)
    {
        if (pull.Url.Length > 0 && PullNames.Fault(pull.Url) is { } fault)
        {
            var at = section.KeyOf("url");
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("url")}: {fault}", "dates stand in braces: {yyyyMMdd}, {yyyy}, {MM}, {dd}, {yyyy-MM-dd}");
        }
        else if (pull.Url.Length > 0
            && !(Uri.TryCreate(PullNames.Fill(pull.Url, new DateOnly(2026, 6, 21)), UriKind.Absolute, out var address) && address.Scheme is "http" or "https" && address.UserInfo.Length == 0))
        {
            var at = section.KeyOf("url");
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("url")}: {Wording.Quote(pull.Url)} is not an address", "it begins with https:// or http:// and holds no user name or password: those belong in headers, from environment variables");
        }

        if (pull.DaysBack > 0 && !PullNames.HasDate(pull.File))
        {
            // Numbered names would be taken in the wrong order: the oldest day's file last.
            var at = section.KeyOf(section.Has("file") ? "file" : "days_back");
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("file")}: {Wording.Quote(pull.File)} would be the name of several days' files", "put the date into it, such as \"yard-{yyyyMMdd}.csv\", so that they are read in order");
        }

        if (PullNames.Fault(pull.File) is not null || pull.File.AsSpan().IndexOfAny('/', '\\') >= 0
            || !ReadingsFile.Fits(files, PullNames.Fill(pull.File, new DateOnly(2026, 6, 21))))
        {
            var at = section.KeyOf("file");
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("file")}: {Wording.Quote(pull.File)} does not fit the source's files {Wording.Quote(files)}", "write the name under which the file is kept, such as \"yard-{yyyyMMdd}.csv\"");
        }
    }
}
