/* Daily reference ET of many station days as a C programmer would write it, FAO-56 equations by number; each row stands alone. */
#include <math.h>

#define PI 3.14159265358979323846

static double saturation(double t) { return 0.6108 * exp(17.27 * t / (t + 237.3)); }                /* 11 */
static double clamp(double x, double least, double most) { return x < least ? least : x > most ? most : x; }
static double fourth(double x) { return (x * x) * (x * x); }

/* Columns: latitude, elevation, height of the wind, day of the year, Tmax, Tmin, RHmax, RHmin, wind, Rs. */
void eto_days(int rows, const double *latitude, const double *elevation, const double *height, const double *day,
              const double *tmax, const double *tmin, const double *rhmax, const double *rhmin, const double *wind,
              const double *rs, double *eto)
{
    for (int i = 0; i < rows; i++) {
        double year = 2 * PI / 365 * day[i], phi = PI / 180 * latitude[i];
        double declination = 0.409 * sin(year - 1.39);                                               /* 24 */
        double sunset = acos(clamp(-tan(phi) * tan(declination), -1, 1));                            /* 25 */
        double ra = 12 * 60 / PI * 0.0820 * (1 + 0.033 * cos(year))                                  /* 21, 23 */
            * (sunset * 2 * sin(phi) * sin(declination) + cos(phi) * cos(declination) * 2 * sin(sunset));
        if (ra < 0)
            ra = 0;
        double u2 = height[i] == 2 ? wind[i] : wind[i] * 4.87 / log(67.8 * height[i] - 5.42);        /* 47 */
        double most = saturation(tmax[i]), least = saturation(tmin[i]), mean = (tmax[i] + tmin[i]) / 2;
        double es = (most + least) / 2;                                                              /* 12 */
        double ea = (least * (rhmax[i] / 100) + most * (rhmin[i] / 100)) / 2;                        /* 17 */
        double slope = 4098 * saturation(mean) / ((mean + 237.3) * (mean + 237.3));                  /* 13 */
        double gamma = 0.665e-3 * 101.3 * pow((293 - 0.0065 * elevation[i]) / 293, 5.26);            /* 7, 8 */
        double clear = (0.75 + 2e-5 * elevation[i]) * ra;                                            /* 37 */
        double cloud = 1.35 * clamp(clear > 0 ? rs[i] / clear : 0.7, 0.3, 1) - 0.35;
        double rn = (1 - 0.23) * rs[i]                                                               /* 38, 39, 40 */
            - 4.903e-9 * (fourth(tmax[i] + 273.16) + fourth(tmin[i] + 273.16)) / 2 * (0.34 - 0.14 * sqrt(ea)) * cloud;
        double mm = (0.408 * slope * rn + gamma * 900 / (mean + 273) * u2 * (es - ea)) / (slope + gamma * (1 + 0.34 * u2));   /* 6 */
        eto[i] = mm > 0 ? mm : 0;
    }
}
