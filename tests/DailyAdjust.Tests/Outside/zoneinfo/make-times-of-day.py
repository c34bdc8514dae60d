# Writes times-of-day.csv: every half hour of the dates on which clocks are moved, by Python's zoneinfo (PEP 495) and the machine's time zone database.
import datetime
import zoneinfo

ZONES = [
    ("America/Denver", 2026), ("Europe/Dublin", 2026), ("America/Havana", 2026), ("Asia/Beirut", 2026), ("America/Santiago", 2026),
    ("Atlantic/Azores", 2026), ("Australia/Lord_Howe", 2026), ("Africa/Casablanca", 2026), ("Pacific/Apia", 2011), ("Asia/Kathmandu", 2026),
]
MINUTE, HOUR, DAYS = (datetime.timedelta(minutes=1), datetime.timedelta(hours=1), datetime.timedelta(days=2))


def local(zone, at):
    return at.replace(tzinfo=datetime.timezone.utc).astimezone(zone)


def offset(zone, at):
    return local(zone, at).utcoffset()


def changes(zone, year):
    at = datetime.datetime(year, 1, 1) - HOUR
    while at.year <= year:
        if offset(zone, at) != offset(zone, at + HOUR):
            change = next(at + MINUTE * m for m in range(1, 61) if offset(zone, at + MINUTE * m) != offset(zone, at))
            yield change, offset(zone, at), offset(zone, at + HOUR)
        at += HOUR


with open("times-of-day.csv", "w") as out:
    version = open("/usr/share/zoneinfo/tzdata.zi").readline().split()[-1]
    out.write(f"# When times of day come on dates on which clocks are moved, by Python's zoneinfo (PEP 495) and tzdata {version}: a time that comes twice is the first of the two, one that never comes is when the gap ends.\n")
    out.write("zone,local,utc,comes\n")
    for name, year in ZONES:
        zone = zoneinfo.ZoneInfo(name)
        moved = list(changes(zone, year))
        dates = sorted({(c + o).date() for c, was, then in moved for o in (was, then, was - MINUTE)}) or [datetime.date(year, 3, 29)]
        for date in dates:
            for half in range(48):
                time = datetime.datetime(date.year, date.month, date.day) + HOUR / 2 * half
                instants = sorted({time - offset(zone, time + d) for d in (-DAYS, DAYS)})
                instants = [at for at in instants if local(zone, at).replace(tzinfo=None) == time]
                at = instants[0] if instants else next(c for c, was, then in moved if c + was <= time < c + then)
                out.write(f"{name},{time:%Y-%m-%dT%H:%M},{at:%Y-%m-%dT%H:%M},{('never', 'once', 'twice')[len(instants)]}\n")
