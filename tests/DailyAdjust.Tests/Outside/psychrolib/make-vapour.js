// Makes vapour.csv with npm psychrolib 1.1.1 (MIT; ASHRAE Handbook of Fundamentals 2017): npm i psychrolib@1.1.1 && node make-vapour.js > vapour.csv
const p = require('psychrolib');

p.SetUnitSystem(p.SI);
console.log('# source: npm psychrolib 1.1.1; made by make-vapour.js beside this file');
console.log('temperature_c,humidity_percent,saturation_kpa,dew_point_c');
for (let t = 2; t <= 46; t += 4) {
  for (const humidity of [30, 60, 95]) {
    const dew = p.GetTDewPointFromRelHum(t, humidity / 100);
    if (dew < 0) continue; // below 0 °C the package is over ice, the reference equation over water
    console.log([t, humidity, (p.GetSatVapPres(t) / 1000).toFixed(5), dew.toFixed(3)].join(','));
  }
}
