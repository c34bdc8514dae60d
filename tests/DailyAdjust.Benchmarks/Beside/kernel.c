/* The zone day as a C programmer would write it: turf draws up to each event, then the water comes in; what exceeds field
   capacity drains. The same steps in the same order as ZoneDaySums and RootZone, for days and zones one after another. */
#include <math.h>

struct event { double drawn_by, amount; int kind; };
enum { RAIN, IRRIGATION, HOSE, PROBE };

struct zone { double total, allowable, depletion, stress; };
struct sums { double drawn, irrigation, hose, drained, probe; };

static double draw(struct zone *z, double demand)
{
    if (demand <= 0)
        return 0;
    if (isnan(z->stress)) {
        z->stress = 1;
        if (z->depletion > z->allowable) {
            z->stress = (z->total - z->depletion) / (z->total - z->allowable);
            if (z->stress < 0)
                z->stress = 0;
        }
    }
    double left = z->total - z->depletion, drawn = demand * z->stress;
    if (drawn >= left) {
        z->depletion = z->total;
        return left;
    }
    z->depletion += drawn;
    return drawn;
}

static double add(struct zone *z, double water)
{
    if (water <= 0)
        return 0;
    z->stress = NAN;
    z->depletion -= water;
    if (z->depletion >= 0)
        return 0;
    double drained = -z->depletion;
    z->depletion = 0;
    return drained;
}

static struct sums zone_day(struct zone *z, const struct event *e, int count, double demand)
{
    struct sums s = {0};
    double by = 0;
    z->stress = NAN;
    for (int i = 0; i < count; i++, e++) {
        s.drawn += draw(z, demand * (e->drawn_by - by));
        if (e->drawn_by > by)
            by = e->drawn_by;
        if (e->kind == PROBE) {
            double kept = e->amount < 0 ? 0 : e->amount > z->total ? z->total : e->amount;
            s.probe += kept - z->depletion;
            z->depletion = kept;
            z->stress = NAN;
            continue;
        }
        if (e->kind == IRRIGATION)
            s.irrigation += e->amount;
        else if (e->kind == HOSE)
            s.hose += e->amount;
        s.drained += add(z, e->amount);
    }
    s.drawn += draw(z, demand * (1 - by));
    return s;
}

/* Days one after another, each with all its zones; first[i] is where the events of zone day i begin.
   totals: drawn, irrigation, drained, depletion at the day's end, added up. */
void zone_days(int days, int zones, const double *total, const double *allowable, double *depletion,
               const double *demand, const int *first, const struct event *events, double *totals)
{
    double drawn = 0, irrigation = 0, drained = 0, depletions = 0;
    for (int day = 0, i = 0; day < days; day++)
        for (int zone = 0; zone < zones; zone++, i++) {
            struct zone z = { total[zone], allowable[zone], depletion[zone], NAN };
            struct sums s = zone_day(&z, events + first[i], first[i + 1] - first[i], demand[i]);
            depletion[zone] = z.depletion;
            drawn += s.drawn;
            irrigation += s.irrigation;
            drained += s.drained;
            depletions += z.depletion;
        }
    totals[0] = drawn;
    totals[1] = irrigation;
    totals[2] = drained;
    totals[3] = depletions;
}
