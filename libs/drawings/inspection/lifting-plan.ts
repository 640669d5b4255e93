import { standardGravityMps2 } from '#kernel';
import type { HangResult, PackPlan, PickResult } from '#pack-plan';
import { type Node, type Units, formatForce, formatLength, formatMass, node } from '../tree/index.js';
import { code, heading, lines, says } from './paged.js';

/** Loads of every pick at its worst, what they were compared with, and the lift sequence of each hang. */
export function liftingPlan({ picks }: PackPlan, units: Units): readonly Node[] {
  return [
    heading('Lifting plan'),
    ...picks.hangs.map((hang) =>
      node(
        'div',
        { class: 'together' },
        node('h3', {}, hang.name),
        says(
          `${formatMass(hang.massKg, units)} at trim ${formatLength(hang.trimHeightMm, units)}, tilt ${hang.tiltDownDeg}° down. ${sequence(hang)}`,
          hang.runningOrder.approved ? undefined : 'stop',
        ),
        hang.unshared
          ? says(`${hang.unshared.sentence} In all ${formatForce(hang.unshared.totalN, units)}.`)
          : lines(
              ['Pick', 'Hoist', 'Hook load', 'Point load', 'With dynamics', 'At worst', 'Compared'],
              hang.picks.map((pick) => [
                `hole ${pick.hole}, ${pick.point}`,
                node('span', {}, code(pick.hoistSerial ?? 'none found'), ` ${pick.hoist}`),
                formatMass((pick.worst ?? pick).hookLoadKg, units),
                formatForce((pick.worst ?? pick).pointLoadN, units),
                formatForce((pick.worst ?? pick).pointLoadDynamicN, units),
                pick.worst?.at ?? 'at rest',
                compared(pick),
              ]),
            ),
      ),
    ),
    says(
      `Hook load is what the hoist carries, point load what the structure carries, each at the worst moment of lifting; g = ${standardGravityMps2} m/s².`,
    ),
  ];
}

const sequence = ({ runningOrder, system }: HangResult): string =>
  runningOrder.manual === null
    ? `■ No lift sequence of the rigging system ${system} is on file.`
    : runningOrder.approved === null
      ? `■ Lift sequence ${runningOrder.manual}: an example, not for use; the safety officer has not approved this revision.`
      : `Lift sequence ${runningOrder.manual}, approved by ${runningOrder.approved}.`;

/** What is not within its limit is named; else how many were compared. */
function compared({ comparisons }: PickResult): string {
  const open = comparisons.filter((each) => each.verdict !== 'within');
  if (open.length > 0) return open.map((each) => `${each.verdict === 'over' ? '■' : '◐'} ${each.what}: ${each.verdict}`).join('; ');
  return comparisons.length === 0
    ? '◐ nothing compared'
    : comparisons.length === 1
      ? 'the one load within its limit'
      : `all ${comparisons.length} loads within their limits`;
}
