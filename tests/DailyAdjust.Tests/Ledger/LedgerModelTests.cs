using CsCheck;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Inputs;
using Xunit;
using static DailyAdjust.Tests.Ledger.Samples;

namespace DailyAdjust.Tests.Ledger;

/// <summary>Random sequences of everything that the ledger takes in, against plain lists that do the same the slow way.</summary>
public sealed class LedgerModelTests
{
    private static readonly string[] _contents = ["", "h\n", "h\n1\n", "h\n1\n2\n", "h\n2\n", "x"];
    private static readonly string[] _sources = ["yard", "far"];
    private static readonly Place[] _places = [Program("C1", "P1"), Program("C1", "P2"), Site];
    private static readonly string[] _times = ["2026-06-08", "2026-06-08 05:00", "2026-06-09"];
    private static readonly LogKind[] _kinds = [LogKind.Setting, LogKind.Ran];

    private static readonly Gen<LogEntry> _entry = Gen.OneOf(
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 1], Gen.Int[0, 2], Gen.Int[0, 2], Gen.Int[0, 1], (t, k, p, v, o) => Entry(_times[t], _kinds[k], _places[p], v, ordinal: o)),
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 2], Gen.Int[0, 2], Gen.Int[0, 1], (t, k, p, o) =>
            Entry(_times[t], LogKind.Void, _places[p], text: k == 2 ? "void" : _kinds[k] == LogKind.Setting ? "setting" : "ran", ordinal: o)));

    private static readonly Gen<Act> _act = Gen.Frequency(
        (4, Gen.Select(Gen.Int[0, 5], Gen.Int[0, 1], (c, s) => (Act)new StoreAct(_contents[c], _sources[s]))),
        (5, _entry.List[1, 3].Select(e => (Act)new LogAct(e))),
        (3, Gen.Select(Gen.Int[1, 9], Gen.Bool, Gen.Int[0, 2], (d, c, t) => (Act)new SiteAct(new DateOnly(2026, 6, d), c, $"text {t}"))),
        (1, Gen.Const((Act)new ReopenAct())),
        (1, Gen.Const((Act)new DropAct())));

    [Fact]
    public void Any_sequence_of_inputs_leaves_what_plain_lists_would() =>
        Gen.Select(_act, Gen.Bool).List[1, 25].Sample(
            acts =>
            {
                using var home = new LedgerFolder();
                var ledger = home.Write();
                var model = new Model();
                try
                {
                    foreach (var (act, fails) in acts)
                    {
                        if (act is ReopenAct)
                        {
                            ledger.Dispose();
                            ledger = home.Write();
                        }
                        else if (fails)
                        {
                            Assert.Throws<TimeoutException>(() => ledger.InOneStep(() =>
                            {
                                Do(ledger, act);
                                throw new TimeoutException();
                            }));
                        }
                        else
                        {
                            Assert.Equal(model.Do(act), Do(ledger, act), StringComparer.Ordinal);
                        }

                        model.AssertIn(ledger);
                    }

                    Assert.Empty(ledger.IntegrityCheck(everyFile: true));
                }
                finally
                {
                    ledger.Dispose();
                }
            },
            iter: 150,
            threads: 1);

    private static string Do(SiteLedger ledger, Act act)
    {
        switch (act)
        {
            case StoreAct s:
                var stored = ledger.Files.Store("a.csv", s.Source, Bytes(s.Text), LedgerFolder.Noon);
                return FormattableString.Invariant($"{stored.Seq} {stored.Outcome} {stored.From}");
            case LogAct l:
                var added = ledger.Logbook.Add(l.Entries, LedgerFolder.Noon);
                return FormattableString.Invariant($"{added.Added.Count} {added.Superseded} {added.Known}");
            case SiteAct v:
                var version = ledger.SiteVersions.Add(v.From, v.Corrects, Bytes(v.Text), [], LedgerFolder.Noon);
                return FormattableString.Invariant($"{version?.Seq} {version?.From.Day}");
            default:
                ledger.DropDerived();
                return "";
        }
    }

    private abstract record Act;

    private sealed record StoreAct(string Text, string Source) : Act;

    private sealed record LogAct(List<LogEntry> Entries) : Act;

    private sealed record SiteAct(DateOnly From, bool Corrects, string Text) : Act;

    private sealed record ReopenAct : Act;

    private sealed record DropAct : Act;

    /// <summary>The same promises, written down as they are told: one list of what arrived, searched from its ends.</summary>
    private sealed class Model
    {
        private readonly List<object> _inputs = [];

        public string Do(Act act) => act switch
        {
            StoreAct s => Store(s),
            LogAct l => Log(l),
            SiteAct v => AddSite(v),
            _ => "",
        };

        public void AssertIn(SiteLedger ledger)
        {
            Assert.Equal(_inputs.Count, ledger.Watermark);
            for (var seq = 1; seq <= _inputs.Count; seq++)
            {
                if (_inputs[seq - 1] is StoreAct s)
                {
                    Assert.Equal(Bytes(s.Text), Samples.BytesOf(ledger, seq));
                    Assert.Equal(s.Source, ledger.Files.Get(seq).Source, StringComparer.Ordinal);
                }
            }

            foreach (var upTo in (int[])[_inputs.Count, _inputs.Count / 2])
            {
                Assert.Equal(Holding(upTo), ledger.Logbook.Effective(upTo).Select(e => (e.Identity, e.Value)));
                var versions = ledger.SiteVersions.Effective(upTo);
                for (var day = new DateOnly(2026, 6, 1); day.Day <= 10; day = day.AddDays(1))
                {
                    var held = versions.LastOrDefault(v => v.From <= day);
                    Assert.Equal(InForce(day, upTo)?.Text, held is null ? null : System.Text.Encoding.UTF8.GetString(held.Site), StringComparer.Ordinal);
                }
            }
        }

        private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.Ordinal);

        private string Store(StoreAct s)
        {
            var known = _inputs.IndexOf(s);
            if (known >= 0)
            {
                return FormattableString.Invariant($"{known + 1} AlreadyKnown {s.Text.Length}");
            }

            var longest = _inputs.OfType<StoreAct>().Where(b => Same(b.Source, s.Source) && s.Text.StartsWith(b.Text, StringComparison.Ordinal))
                .Select(b => b.Text.Length).DefaultIfEmpty(0).Max();
            _inputs.Add(s);
            return FormattableString.Invariant($"{_inputs.Count} {(longest > 0 ? FileOutcome.Grew : FileOutcome.New)} {longest}");
        }

        private string Log(LogAct l)
        {
            var (added, superseded) = (0, 0);
            foreach (var entry in l.Entries)
            {
                var newest = _inputs.OfType<LogEntry>().LastOrDefault(e => e.Identity == entry.Identity);
                if (newest is not null && newest.Value == entry.Value && Same(newest.Text, entry.Text))
                {
                    continue;
                }

                added++;
                superseded += newest is null ? 0 : 1;
                _inputs.Add(entry);
            }

            return FormattableString.Invariant($"{added} {superseded} {l.Entries.Count - added}");
        }

        /// <summary>A row holds when no later row has its identity and no later row is a void of it that holds itself.</summary>
        private bool Holds(int at, int upTo)
        {
            var entry = (LogEntry)_inputs[at];
            for (var later = at + 1; later < upTo; later++)
            {
                if (_inputs[later] is LogEntry e
                    && (e.Identity == entry.Identity
                        || (e.Kind == LogKind.Void && e.Time == entry.Time && Same(e.Text, entry.Kind == LogKind.Setting ? "setting" : entry.Kind == LogKind.Ran ? "ran" : "void")
                            && (e.Where == Site || e.Where == entry.Where) && Holds(later, upTo))))
                {
                    return false;
                }
            }

            return true;
        }

        private List<((LogTime, LogKind, string, int), double?)> Holding(int upTo) =>
        [
            .. Enumerable.Range(0, upTo)
                .Where(i => _inputs[i] is LogEntry { Kind: not LogKind.Void } && Holds(i, upTo))
                .Select(i => (LogEntry)_inputs[i])
                .OrderBy(e => _inputs.FindIndex(x => x is LogEntry first && first.Identity == e.Identity))
                .Select(e => (e.Identity, e.Value)),
        ];

        private string AddSite(SiteAct v)
        {
            var from = v.Corrects && InForce(v.From, _inputs.Count) is { } corrected ? corrected.From : v.From;
            var last = _inputs.OfType<SiteAct>().LastOrDefault();
            if (last is not null && Same(last.Text, v.Text) && from >= last.From)
            {
                return " ";
            }

            _inputs.Add(v with { From = from });
            return FormattableString.Invariant($"{_inputs.Count} {from.Day}");
        }

        /// <summary>The latest to arrive of those that begin on or before the day, for a later one takes all from its day on.</summary>
        private SiteAct? InForce(DateOnly day, int upTo) => _inputs.Take(upTo).OfType<SiteAct>().LastOrDefault(v => v.From <= day);
    }
}
