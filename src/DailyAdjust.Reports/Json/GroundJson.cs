using System.Text.Json.Serialization;
using DailyAdjust.Core.Morning;
using DailyAdjust.Reports.Words;
using static DailyAdjust.Reports.Json.JsonWriting;

namespace DailyAdjust.Reports.Json;

internal sealed record DryZoneJson(
    string Controller, string Station, double DepletionMm, double AllowableMm, double GiveMm, double? GiveL, string Why, string? Since, bool Probed, int EstimatedDays, bool RateAssumed, string BeforeHose,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] OtherWayJson? OtherWay);

internal sealed record OtherWayJson(bool IfDone, double GiveMm);

internal sealed record SpotJson(string Controller, string Station, string Time, double Percent, double? MissingMm, string Note);

internal sealed record ProbedJson(string Controller, string Station, string At, double ReckonedMm, double ProbedMm, double CutMm, string Instrument, double? RodM);

internal sealed record ByHandJson(string Controller, string Station, string Since, bool WasFull, double EtoMm, double? EtoL, double MissingMm, double? MissingL);

internal sealed record MinutesJson(
    string Controller, string Program, string Station, double From, double To, double NeedPercent, double MedianPercent, string Since, int Mornings);

internal sealed record GroundJson(
    IReadOnlyList<DryZoneJson> Driest, IReadOnlyList<SpotJson> Spots, IReadOnlyList<ProbedJson> Probes, IReadOnlyList<ByHandJson> ByHand, IReadOnlyList<MinutesJson> Minutes)
{
    public static GroundJson Of(MorningSheet sheet)
    {
        var ground = sheet.Ground;
        return new(
            [.. sheet.Driest.Select(d => new DryZoneJson(
                d.Station.Controller, d.Station.Station, Number(d.DepletionMm), Number(d.AllowableMm), Number(d.ShortMm), Number(d.VolumeL), d.Why.ToString(),
                Date(d.Sure.Since), d.Sure.Probed, d.Sure.EstimatedDays, d.Sure.RateAssumed, d.BeforeHose.ToString(),
                d.OtherWay is { } other ? new OtherWayJson(other.IsIfDone, Number(other.ShortMm)) : null))],
            [.. ground.Spots.Select(s => new SpotJson(
                s.Station.Controller, s.Station.Station, Time(s.Time), Number(s.Percent), Number(s.MissingMm), s.Note))],
            [.. ground.Probes.Select(p => new ProbedJson(p.Station.Controller, p.Station.Station, Local(p.At, sheet.Site.Clock), Number(p.ReckonedMm), Number(p.ProbedMm), Number(p.CutMm), p.Instrument, Number(p.RodLengthM)))],
            [.. ground.ByHand.Select(h => new ByHandJson(
                h.Station.Controller, h.Station.Station, CodeWords.Date(h.Since), h.WasFull, Number(h.EtoMm), Number(h.EtoL), Number(h.MissingMm), Number(h.MissingL)))],
            [.. ground.Minutes.Select(m => new MinutesJson(
                m.Program.Controller, m.Program.Program, m.Station.Station, Number(m.From), Number(m.To), Number(m.NeedPercent), Number(m.MedianPercent), CodeWords.Date(m.Since), m.Mornings))]);
    }
}
