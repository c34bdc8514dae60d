// Makes sun.csv with npm astronomy-engine 2.1.19 (MIT): npm i astronomy-engine@2.1.19 && node make-sun.js > sun.csv
// Sunrise and sunset: the sun's centre at an altitude of 0, without refraction, searched from 13 h before local mean noon on.
// Elevation: without refraction, 3 h after local mean noon.
const A = require('astronomy-engine');

const places = [
  ['Quito', -0.2, -78.5], ['Honolulu', 21.3, -157.9], ['Phoenix', 33.4, -112.0], ['Tamarack', 44.21, -98.32],
  ['Lyon', 45.72, 4.85], ['Edinburgh', 55.95, -3.2], ['Auckland', -36.85, 174.76], ['Sydney', -33.87, 151.2],
  ['Cape Town', -33.92, 18.42], ['Ushuaia', -54.8, -68.3],
];
const dates = ['2026-01-15', '2026-02-15', '2026-03-20', '2026-04-15', '2026-05-15', '2026-06-21',
  '2026-07-15', '2026-08-15', '2026-09-22', '2026-10-15', '2026-11-15', '2026-12-21', '2028-02-29'];

const whole = (t) => new Date(Math.round(t.date.getTime() / 1000) * 1000).toISOString().slice(0, 19) + 'Z';
console.log('# source: npm astronomy-engine 2.1.19; made by make-sun.js beside this file');
console.log('place,latitude,longitude,date,sunrise_utc,sunset_utc,afternoon_utc,elevation_deg');
for (const [place, latitude, longitude] of places) {
  const observer = new A.Observer(latitude, longitude, 0);
  for (const date of dates) {
    const noon = new Date(Date.parse(date + 'T12:00:00Z') - longitude * 240000);
    const from = new Date(noon.getTime() - 13 * 3600000);
    const rise = A.SearchAltitude(A.Body.Sun, observer, +1, from, 1, 0);
    const set = A.SearchAltitude(A.Body.Sun, observer, -1, noon, 1, 0);
    const later = new Date(noon.getTime() + 3 * 3600000);
    const equator = A.Equator(A.Body.Sun, later, observer, true, true);
    const elevation = A.Horizon(later, observer, equator.ra, equator.dec).altitude;
    console.log([place, latitude, longitude, date, whole(rise), whole(set), later.toISOString().slice(0, 19) + 'Z', elevation.toFixed(3)].join(','));
  }
}
