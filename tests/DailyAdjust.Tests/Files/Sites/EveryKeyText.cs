namespace DailyAdjust.Tests.Files.Sites;

/// <summary>A site with the keys that the example site does not use.</summary>
internal static class EveryKeyText
{
    public const string Yaml = """
        site: { name: Wrenfield, latitude: 53.2, longitude: -6.1, elevation: 12 m, time_zone: Europe/Dublin, units: metric, start: 2026-04-01, start_soil: assumed, correct: true }
        report: { at: ["11:00", "04:30"], round_done_by: "12:00", first_play: "06:45", language: es, satisfy: 70 %, skip_below: 30 %, skip_room: 12 %, worth: 4 %, weather_max_age: 36 h }
        weather:
          stations:
            - id: mast
              wind_height: 10 m
              coastal: true
              files: "mast*.txt"
              format: csv
              time: { column: Datum, time_column: Uhr, pattern: "dd.MM.yyyy HH:mm", clock: utc, stamp: start }
              interval: 10 min
              missing: "-999"
              delimiter: semicolon
              decimal: comma
              eto: supplied
              columns:
                air_temperature: { column: TT, unit: degC }
                reference_et: { column: ET0, unit: mm }
                solar_radiation: "Globalstrahlung [J/cm2]"
            - id: club
              files: "club.csv"
              format: csv
              time: { column: Day, pattern: "M/d/yyyy", clock: standard, stamp: start }
              interval: 1 d
              columns: { air_temperature_max: "Tmax (F)", air_temperature_min: "Tmin (F)", rain: "Rain (in/day)" }
          gauges:
            - { id: barn, by_hand: true }
            - { id: club, station: club }
          normals:
            eto: { unit: in/day, values: [0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.2] }
            rain: { unit: mm, values: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] }
        soils:
          push-up: { texture: sandy-loam }
        areas:
          greens: { grass: bent, kc: uc-cool-season, root_depth: 100 mm, soil: push-up, allowable_depletion: 50 %, efficiency: 75 %, gauge: club, precipitation_rate: 14 mm/h, exposure: 0.9 }
          lawn: { grass: rye, kc: cool-season-deficit, root_depth: 0.2 m, soil: push-up, allowable_depletion: 50 %, efficiency: 75 % }
        controllers:
          - id: A
            percent: { applies: none }
            minutes: { step: 30 s, rounding: down }
            overlap: stack
            station_gap: 20 s
            pause: 7 d
            min_run: 90 s
            clock: standard
            programs:
              - { id: "1", starts: "23:00", days: even, visit: { day: 31 } }
              - { id: "2", starts: ["04:00", "01:00"], days: monday }
          - id: B
            route: 7
            percent: { applies: controller, max: 250 %, step: 1 %, shows: change }
            programs: [ { id: "1", starts: ["02:00"], days: every day } ]
        restrictions:
          - { name: Stage 2, from: 2026-07-01, until: 2026-08-31, areas: [lawn], days: [sun], hours: { from: "10:00", until: "18:00" }, percent: 80 % }
        """;

    public const string Csv = """
        controller;station;area;minutes 1;minutes 2 (s);precipitation rate (mm/h);flow (L/s);area watered (m2);exposure;gauge;note;;
        A;s1;greens;10;;;;;;;"=1+1; a ""quoted"" note";;
        a;s2;Lawn;;90;12;;;1.2;barn;;;
        B;s1;lawn;5;;;1;200;;;;;
        ;;;;;;;;;;;;
        """;
}
