import { type Words, tell } from '../../table/index.js';
import { against } from './cart-findings.js';
import { list, plural, span } from '../parts/index.js';

type HardwareTable = Pick<
  Words['findings'],
  | 'hardware-missing'
  | 'travelling-and-fitted-differ'
  | 'kept-with-boxes-differs'
  | 'frame-not-counted'
  | 'control-not-counted'
  | 'control-not-in-loads'
  | 'frame-without-rated-value'
  | 'frame-over-rated'
  | 'chain-too-short'
  | 'no-point-height'
>;

type MissingNumbers = Readonly<Record<'missing' | 'travelling' | 'spares' | 'onHand' | 'keptAtHome', number>>;

/** What is wanted less what is to be had is what is missing. Those that stay at home may be among those that others hold already. */
function toBeHad({ missing, travelling, spares, onHand, keptAtHome }: MissingNumbers): string {
  const free = travelling + spares - missing;
  if (keptAtHome === 0 && free === onHand) return `To be had: ${free}.`;
  if (free === onHand - keptAtHome)
    return `To be had: ${free}, for of ${onHand} on hand ${keptAtHome} stay at home with their boxes and carts.`;
  const others = keptAtHome === 0 ? '' : ` Boxes and carts that stay at home keep ${keptAtHome}, some of them promised to others.`;
  return `To be had on the day with the fewest: ${free}.${others}`;
}

export const hardwareFindings: HardwareTable = {
  'hardware-missing': ({ subjects: { line }, numbers, days, outOfUse }) => {
    const { missing, travelling, spares } = numbers;
    const out = outOfUse.map((each) => `${each.lot} (${each.count}) is out of use: ${tell(against, each.why)}.`);
    const name = `${line.item} (${line.model}${line.size ? `, ${line.size}` : ''})`;
    const wanted = `Wanted: ${travelling + spares}, ${travelling} to travel and ${spares} spare.`;
    return [`${name}: ${missing} missing ${span(days.from, days.to)}.`, wanted, toBeHad(numbers), ...out].join(' ');
  },
  'travelling-and-fitted-differ': ({ counts }) => {
    const each = counts.map(({ item, model, travelling, staysInBox, fitted, difference }) => {
      const word = difference < 0 ? `${-difference} too few` : `${difference} too many`;
      const up =
        staysInBox === 0
          ? `${travelling} travel`
          : `${travelling} travel, less ${staysInBox} that stay in their box, leaves ${travelling - staysInBox}`;
      return `${item} (${model}): ${up}. ${fitted} are fitted: ${word}.`;
    });
    return [...each, 'Either a box or cart of the design was not found, or a box brings other pins than its joint takes.'].join(' ');
  },
  'kept-with-boxes-differs': ({ subjects: { model }, numbers: { onFile, byModels } }) => {
    const word = onFile < byModels ? `${byModels - onFile} too few` : `${onFile - byModels} too many`;
    return `${model.id}: ${onFile} on file as kept with the boxes and carts. These take ${byModels}: ${word}. Count them, then put the batch right.`;
  },
  'frame-not-counted': ({ subjects: { model }, numbers: { frames } }) =>
    `${plural(frames, 'frame')} ${model.id} with the pins of the joint above each: its model is not on file. Count them by hand, or name the model of frame in the rigging system.`,
  'control-not-counted': ({ lacking }) =>
    `${lacking
      .map(({ model, hoists, parts }) => `${model} (${plural(hoists, 'hoist')}): no ${parts.join(' or ')} on file with the model`)
      .join('; ')}. Count by hand what goes with the hoists, or name it with the model of hoist.`,
  'control-not-in-loads': ({ numbers: { massKg, heightMm }, parts }) =>
    `The ${parts.join(' and ')} of each hoist, up to ${Number(massKg.toFixed(1))} kg at a point, and the run of its motor cable are in none of the loads of this plan${heightMm > 0 ? `, the ${heightMm} mm of the cell in no headroom` : ''}. Add them to every point load that is passed on.`,
  'frame-without-rated-value': ({ subjects: { hang, model }, numbers: { carriesKg } }) =>
    `${hang.name}: ${model.id} carries up to ${Number(carriesKg.toFixed(1))} kg below it, and no rated load of it is on file: compared with nothing. Ask the maker.`,
  'frame-over-rated': ({ subjects: { hang, model }, numbers: { carriesKg, limitKg, ratedKg, share } }) =>
    `${hang.name}: ${model.id} carries up to ${Number(carriesKg.toFixed(1))} kg below it, a cart’s base included; its rated ${Number(ratedKg.toFixed(1))} kg${
      share === 1 ? '' : ` times ${Number(share.toFixed(3))} of the load rule are ${Number(limitKg.toFixed(1))} kg`
    }.`,
  'chain-too-short': ({ subjects: { pick, hoist }, numbers: { onFileM, neededM, pointHeightMm } }) =>
    `${pick.name}, hole ${pick.hole}: ${hoist.id} has ${onFileM} m of chain on file and needs ${Number(neededM.toFixed(3))} m ${
      pointHeightMm === null ? 'for the trim height alone' : 'from its point to the floor'
    }.`,
  'no-point-height': ({ subjects: { hangs } }) =>
    `No height of the points on file for ${plural(hangs.length, 'hang')} (${list(hangs.map((each) => each.name))}): the chain was compared with the trim height only.`,
};
