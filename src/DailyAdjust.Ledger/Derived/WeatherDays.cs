using DailyAdjust.Core.Weather;
using DailyAdjust.Ledger.Json;

namespace DailyAdjust.Ledger.Derived;

/// <summary>A weather day and the hash of what it was derived from.</summary>
public sealed record StoredWeatherDay(WeatherDay Day, string InputsHash);

/// <summary>Weather days as they were last derived.</summary>
public sealed class WeatherDays
{
    private readonly LedgerDb _db;

    internal WeatherDays(LedgerDb db) => _db = db;

    /// <summary>Keeps a day in place of an earlier one of its date.</summary>
    /// <returns>Whether the day itself differs from what was there (what rests on it must be computed again).</returns>
    public bool Put(WeatherDay day, string inputsHash) => _db.InOneStep(() =>
    {
        var body = WeatherDayJson.Write(day);
        var before = _db.First("SELECT body FROM weather_day WHERE day = $day", r => r.GetString(0), ("$day", Formats.OfDay(day.Date)));
        _db.Execute(
            """
            INSERT INTO weather_day (day, inputs, body) VALUES ($day, $inputs, $body)
            ON CONFLICT (day) DO UPDATE SET inputs = excluded.inputs, body = excluded.body
            """,
            ("$day", Formats.OfDay(day.Date)),
            ("$inputs", inputsHash),
            ("$body", body));
        return !string.Equals(before, body, StringComparison.Ordinal);
    });

    /// <summary>Null = not derived yet.</summary>
    public StoredWeatherDay? Get(DateOnly day) => Between(day, day) is [var stored] ? stored : null;

    /// <summary>In order of date, both ends included; days that were not derived are left out.</summary>
    public IReadOnlyList<StoredWeatherDay> Between(DateOnly first, DateOnly last) => _db.Query(
        "SELECT body, inputs FROM weather_day WHERE day BETWEEN $first AND $last ORDER BY day",
        r => new StoredWeatherDay(WeatherDayJson.Read(r.GetString(0)), r.GetString(1)),
        ("$first", Formats.OfDay(first)),
        ("$last", Formats.OfDay(last)));

    /// <summary>Forgets the days from a date on.</summary>
    public void ForgetFrom(DateOnly day) => _db.InOneStep(() =>
        _db.Execute("DELETE FROM weather_day WHERE day >= $day", ("$day", Formats.OfDay(day))));
}
