using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

public enum PlaceKind
{
    Site,
    Pump,
    Area,
    Gauge,
    Controller,
    Program,
    Station,
}

/// <summary>Where: site, pump, area:greens, gauge:yard, C1, C1/P2 (program) or C1/3 (station).</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Area, gauge or controller; empty for site and pump.</param>
/// <param name="Item">Program or station of the controller; empty otherwise.</param>
public readonly record struct Place(PlaceKind Kind, string Name, string Item)
{
    public override string ToString() => Kind switch
    {
        PlaceKind.Site => "site",
        PlaceKind.Pump => "pump",
        PlaceKind.Area => "area:" + Name,
        PlaceKind.Gauge => "gauge:" + Name,
        PlaceKind.Controller => Name,
        _ => Name + "/" + Item,
    };

    /// <summary>Whether an entry at this place speaks of the whole program. All water comes from the pump.</summary>
    public bool Covers(ProgramKey program) => Kind switch
    {
        PlaceKind.Site or PlaceKind.Pump => true,
        PlaceKind.Controller => Same(Name, program.Controller),
        PlaceKind.Program => Same(Name, program.Controller) && Same(Item, program.Program),
        _ => false,
    };

    /// <summary>Whether an entry at this place speaks of the station (a program: of each of its stations).</summary>
    public bool Covers(Station station) => Kind switch
    {
        PlaceKind.Site or PlaceKind.Pump => true,
        PlaceKind.Area => Same(Name, station.Area.Name),
        PlaceKind.Controller => Same(Name, station.Key.Controller),
        PlaceKind.Program => Same(Name, station.Key.Controller) && station.BaseMinutes.ContainsKey(Item),
        PlaceKind.Station => Same(Name, station.Key.Controller) && Same(Item, station.Key.Station),
        _ => false,
    };

    /// <summary>Whether an entry at this place speaks of a whole box: the site, or that controller.</summary>
    public bool IsOfBox(string controller) => Kind == PlaceKind.Site || (Kind == PlaceKind.Controller && Same(Name, controller));

    /// <summary>Whether an entry at this place may speak of anything at a controller; an area may lie at any.</summary>
    public bool MayTouch(string controller) => Kind is not (PlaceKind.Controller or PlaceKind.Program or PlaceKind.Station) || Same(Name, controller);

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.Ordinal);
}
