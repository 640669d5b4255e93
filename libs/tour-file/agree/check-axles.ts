import type { BadInput } from '#kernel';
import type { AxlePlace, TruckModel } from '../shapes/index.js';

/** How far the middle of an axle group may lie from where the lever arms have it. */
const sameMm = 50;

/** What does not agree between the places of the single axles and the levers filed with the truck. */
export function axlePlaceFaults(truck: TruckModel): readonly BadInput[] {
  const { axles, semiTrailer, rigid } = truck;
  if (!axles) return [];
  const middles = new Map<AxlePlace['group'], number>();
  if (rigid) middles.set('front', rigid.frontAxleXMm).set('rear', rigid.rearAxleXMm);
  if (semiTrailer) middles.set('trailer', semiTrailer.axleGroupXMm);
  if (semiTrailer?.tractor) {
    const driveXMm = semiTrailer.kingpinXMm + semiTrailer.tractor.kingpinAheadOfDriveMm;
    middles.set('drive', driveXMm).set('steer', driveXMm - semiTrailer.tractor.wheelbaseMm);
  }
  const known = [...middles.keys()];
  if (known.length === 0)
    return [{ field: 'axles', value: `a list of ${axles.length}`, wanted: 'semiTrailer or rigid to go with the axles' }];
  const faults: BadInput[] = [];
  axles.forEach((axle, index) => {
    if (!middles.has(axle.group))
      faults.push({ field: `axles[${index}].group`, value: axle.group, wanted: `one of ${known.join(', ')}: this truck has no other` });
    const before = axles[index - 1];
    if (before && before.xMm >= axle.xMm)
      faults.push({ field: `axles[${index}].xMm`, value: axle.xMm, wanted: `behind the axle before it, at ${before.xMm}` });
  });
  for (const [group, middle] of middles) {
    const places = axles.filter((each) => each.group === group).map((each) => each.xMm);
    const found = places.reduce((sum, each) => sum + each, 0) / places.length;
    if (places.length === 0)
      faults.push({ field: 'axles', value: `no ${group} axle`, wanted: `each axle of the truck, ${group} axles too` });
    else if (Math.abs(found - middle) > sameMm)
      faults.push({
        field: 'axles',
        value: `the middle of the ${group} axles at ${Math.round(found)}`,
        wanted: `${middle}, as the levers filed with this truck have it`,
      });
  }
  return faults;
}
