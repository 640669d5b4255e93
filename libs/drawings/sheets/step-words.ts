import type { RunningOrderStep, StepFact } from '#pack-plan';
import { type Units, formatForce, formatMass, formatNumber } from '../tree/index.js';
import { angle } from './hang-sheet.js';

/** What stands under a step: why everything waits there, what the cells should read, what pulls and what kicks. */
export const stepWords = ({ why, facts = [] }: RunningOrderStep, units: Units): readonly string[] => [
  ...(why === undefined ? [] : [`Because: ${why}`]),
  ...facts.map((fact) => factWords(fact, units)),
];

function factWords({ moment, tiltDownDeg, cells, held, kick }: StepFact, units: Units): string {
  const reads = cells.map(({ hole, hookLoadKg }) => `${hole} ${formatMass(hookLoadKg, units)}`).join(', ');
  const title = moment.charAt(0).toUpperCase() + moment.slice(1);
  return [
    `${title}: grid ${angle(tiltDownDeg)}; cells at the hooks should read ${reads}${moment === 'driven down' || moment === 'rear link drawn' ? ' once the cart carries its load, the least; until then up to what they read before' : ''}.`,
    ...(held
      ? [
          `Held aside at the foot of the lowest box with ${formatForce(held.newtons, units)} level, turned back by ${formatNumber(held.turnedDeg, 1)}°: by a tag line, and hands clear of the joint.`,
        ]
      : []),
    ...(kick ? [kickWords(kick, units)] : []),
  ].join(' ');
}

function kickWords({ position, linkN, newtonMetres, swing }: NonNullable<StepFact['kick']>, units: Units): string {
  const way = linkN < 0 ? 'is pushed' : 'is pulled';
  const swung = swing
    ? ` Drawn while the load hangs, it swings by ${formatNumber(swing.turnsDeg, 1)}° and pulls its two front pins with up to ${formatForce(swing.pinsN, units)}.`
    : '';
  return `The link above box ${position} ${way} with up to ${formatForce(Math.abs(linkN), units)} until the cart carries the load, a moment of ${formatNumber(Math.abs(newtonMetres) / 1000, 2)} kN × m about the front pins: that much kicks when it is drawn.${swung} Draw it only when the cart stands.`;
}
