using System.Collections;
using System.Reflection;
using System.Text.Json.Serialization;
using DailyAdjust.Reports.Json;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>Every key of advice.json is either asked, so that its change is mailed, or only known.</summary>
public sealed class SheetAsksTests
{
    private static readonly string[] Asked =
    [
        "RunByHand", "BoxesToVerify", "ClockChange",
        "Freshness.NoAdvice",
        "Programs.Controller", "Programs.Program", "Programs.Advice", "Programs.Percent", "Programs.NeedsVisit", "Programs.StopRule", "Programs.NewMinutes", "Programs.PauseDays",
        "Programs.TakenOut", "Programs.StationsOut", "Programs.GrowInBegins", "Programs.StartsInPlace",
        "Exceptions.HandRuns", "Exceptions.GrowIns", "Exceptions.PutBack",
        "Ground.Driest.Controller", "Ground.Driest.Station", "Ground.Spots.Controller", "Ground.Spots.Station", "Ground.Spots.Time", "Ground.ByHand.Controller", "Ground.ByHand.Station",
    ];

    private static readonly string[] Known =
    [
        "Site", "Date", "Revision", "Fit", "Issue", "ReplacesIssue", "SiteName", "TimeZone", "AsOf", "Notices", "Forecast", "Corrections", "IfVisited", "Standing", "SecondLook", "SettingsNotUsed",
        "Freshness.WeatherThrough", "Freshness.Station", "Freshness.NoAdviceSince", "Freshness.Assumed", "Freshness.UnknownRain", "Freshness.UnansweredRounds", "Freshness.NeverConfirmed",
        "Freshness.ExpectedEtoMm", "Freshness.AssumedSoil", "Freshness.PassedOverRounds",
        "Programs.Setting", "Programs.ExactPercent", "Programs.NextStart", "Programs.Finishes", "Programs.Reason", "Programs.Zones", "Programs.Name", "Programs.Confirmed", "Programs.Chain",
        "Programs.LookAgain", "Programs.OffUntil", "Programs.After", "Programs.Shortfall", "Programs.Unanswered", "Programs.PausedUntil", "Programs.Fault",
        "Exceptions.RainSwitches", "Exceptions.Season", "Exceptions.Stage", "Exceptions.Night", "Exceptions.TakenOutRuns",
        "Ground.Probes", "Ground.Minutes",
        "Ground.Driest.DepletionMm", "Ground.Driest.AllowableMm", "Ground.Driest.GiveMm", "Ground.Driest.GiveL", "Ground.Driest.Why", "Ground.Driest.Since", "Ground.Driest.Probed",
        "Ground.Driest.EstimatedDays", "Ground.Driest.RateAssumed", "Ground.Driest.BeforeHose", "Ground.Driest.OtherWay",
        "Ground.Spots.Percent", "Ground.Spots.MissingMm", "Ground.Spots.Note",
        "Ground.ByHand.Since", "Ground.ByHand.WasFull", "Ground.ByHand.EtoMm", "Ground.ByHand.EtoL", "Ground.ByHand.MissingMm", "Ground.ByHand.MissingL",
    ];

    /// <summary>Looked into rather than asked or known as a whole.</summary>
    private static readonly string[] Parts = ["Freshness", "Programs", "Exceptions", "Ground", "Ground.Driest", "Ground.Spots", "Ground.ByHand"];

    private static readonly AdviceDocument Full = (AdviceDocument)Filled(typeof(AdviceDocument));

    [Fact]
    public void Every_key_is_one_or_the_other()
    {
        var keys = Keys(typeof(AdviceDocument), "").ToList();
        Assert.Equal(keys.Order(StringComparer.Ordinal), Asked.Concat(Known).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_is_asked_makes_another_sheet_and_what_is_known_does_not()
    {
        foreach (var key in Asked.Concat(Known))
        {
            var without = (AdviceDocument)Without(Full, key.Split('.'));
            Assert.True(Asked.Contains(key) != string.Equals(SheetAsks.Of(Full), SheetAsks.Of(without), StringComparison.Ordinal), key);
        }
    }

    [Fact]
    public void An_emptied_list_asks_something_else()
    {
        foreach (var part in new[] { "Ground.Driest", "Ground.Spots", "Programs" })
        {
            Assert.NotEqual(SheetAsks.Of(Full), SheetAsks.Of((AdviceDocument)Without(Full, part.Split('.'), empty: true)));
        }
    }

    private static IEnumerable<string> Keys(Type type, string path)
    {
        foreach (var property in Properties(type))
        {
            var key = path + property.Name;
            if (Parts.Contains(key))
            {
                foreach (var inner in Keys(Element(property.PropertyType), key + "."))
                {
                    yield return inner;
                }
            }
            else
            {
                yield return key;
            }
        }
    }

    private static IEnumerable<PropertyInfo> Properties(Type type) =>
        type.GetProperties().Where(p => p.GetCustomAttribute<JsonIgnoreAttribute>() is not { Condition: JsonIgnoreCondition.Always });

    private static Type Element(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? type.GetGenericArguments()[0] : type;

    /// <summary>A value in which nothing is empty.</summary>
    private static object Filled(Type type)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string))
        {
            return "2026-07-15T05:00";
        }

        if (type.IsValueType)
        {
            return type == typeof(bool) ? true : Convert.ChangeType(1, type, System.Globalization.CultureInfo.InvariantCulture);
        }

        if (Element(type) is var element && element != type)
        {
            return List(element, Filled(element));
        }

        if (typeof(IDictionary).IsAssignableFrom(type))
        {
            return Activator.CreateInstance(type)!;
        }

        var made = type.GetConstructors().MaxBy(c => c.GetParameters().Length)!;
        return made.Invoke([.. made.GetParameters().Select(p => Filled(p.ParameterType))]);
    }

    private static Array List(Type element, params object[] items)
    {
        var list = Array.CreateInstance(element, items.Length);
        items.CopyTo(list, 0);
        return list;
    }

    /// <summary>The same with one key at its default, or an empty list.</summary>
    private static object Without(object from, ReadOnlySpan<string> path, bool empty = false)
    {
        if (from is IList list)
        {
            return List(list[0]!.GetType(), Without(list[0]!, path, empty));
        }

        var name = path[0];
        var changed = typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.Invoke(from, null)!;
        var property = changed.GetType().GetProperty(name)!;
        property.SetValue(changed, path.Length > 1 ? Without(property.GetValue(from)!, path[1..], empty)
            : empty ? List(Element(property.PropertyType))
            : property.PropertyType.IsValueType ? Activator.CreateInstance(property.PropertyType) : null);
        return changed;
    }
}
