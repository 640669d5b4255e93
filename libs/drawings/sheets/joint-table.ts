import type { HangResult } from '#pack-plan';
import { type Node, type Units, formatForce, formatNumber, node } from '../tree/index.js';
import { table } from '../paper/index.js';

/** Forces of every joint with what made them, so that each can be done again by hand. */
export function jointContent(hang: HangResult, units: Units): Node[] {
  const verdicts = (joint: HangResult['joints'][number]) =>
    joint.comparisons.every((each) => each.verdict === 'within')
      ? 'within'
      : [...new Set(joint.comparisons.map((each) => each.verdict).filter((each) => each !== 'within'))].join('; ');
  return [
    node(
      'div',
      { class: 'dense' },
      table(
        [
          'Above',
          { right: 'Hangs below, W' },
          { right: 'd, mm' },
          { right: 'Lever, mm' },
          { right: 'Angle' },
          { right: 'Rear link' },
          { right: 'Front pins x / z' },
          { right: 'Each front pin' },
          'Compared',
        ],
        hang.joints.map((joint) => [
          joint.adapter === null ? `box ${joint.position}` : `${joint.adapter}, above box ${joint.position}`,
          { right: formatForce(joint.loadN, units) },
          { right: formatNumber(joint.distanceMm, 1) },
          { right: formatNumber(joint.leverMm) },
          { right: `${formatNumber(joint.tiltDownDeg, 1)}°` },
          { right: formatForce(joint.rearLinkN, units) },
          { right: `${formatForce(joint.frontPins.xN, units)} / ${formatForce(joint.frontPins.zN, units)}` },
          { right: formatForce(joint.frontPinN, units) },
          verdicts(joint),
        ]),
      ),
    ),
    node(
      'p',
      {},
      `Rear link = −d × W / lever; positive is pulled, negative pushed. Front pins together: x = −link × sin(angle), z = W − link × cos(angle); each carries half (equal share assumed), negative where they push. ${hang.pullBack?.figures ? 'With the pull-back its pull is added to the balance of every joint above its box. ' : ''}Source: balance of moments about the front pivot; levers of the models as filed.`,
    ),
  ];
}
