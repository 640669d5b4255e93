import { adapterBetween } from '#tour-file';
import { type Finding, type HardwareLine, type HardwareResult, plural, say } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';

/** What cannot be covered, with number, size and dates; counts that do not agree; chains that are too short; a trunk below its level. */
export function hardwareFindings(inputs: PlanInputs, hardware: HardwareResult): Finding[] {
  return [
    ...hardware.lines.filter(isNews).map((line) => missing(line)),
    ...difference(hardware.lines.filter((line) => line.difference !== 0)),
    ...hardware.keptWithBoxes
      .filter((each) => each.byModels !== each.onFile)
      .map((each) =>
        say(
          'hardware',
          'look',
          'kept-with-boxes-differs',
          each.model,
          null,
          `${each.model}: ${each.onFile} on file as kept with the boxes and carts, which take ${each.byModels}. Count them, then put the batch right.`,
        ),
      ),
    ...frames(inputs),
    ...chains(inputs, hardware),
  ];
}

/** A missing hoist or grid of a hang is said beside its pick already. */
const isNews = (line: HardwareLine): boolean => line.missing > 0 && (!/^(hoist|grid)$/.test(line.item) || line.spares > 0);

function missing(line: HardwareLine): Finding {
  const days = line.shortOn!.from === line.shortOn!.to ? `on ${line.shortOn!.from}` : `from ${line.shortOn!.from} to ${line.shortOn!.to}`;
  const travelling = line.withBox + line.withCart + line.loose;
  const out = line.outOfUse.map((each) => `${each.lot} (${each.count}) is out of use: ${each.reason}.`);
  const home = line.keptAtHome > 0 ? `, ${line.keptAtHome} of them with boxes and carts that stay` : '';
  const sentence = `${line.item} (${line.model}${line.size ? `, ${line.size}` : ''}): ${line.missing} missing ${days}. ${travelling} travel and ${line.spares} spare, ${line.onHand} on hand${home}.`;
  return say('hardware', 'stop', 'hardware-missing', line.model, line.shortOn!.from, [sentence, ...out].join(' '));
}

function difference(lines: readonly HardwareLine[]): Finding[] {
  if (lines.length === 0) return [];
  const each = lines.map((line) => {
    const travelling = line.withBox + line.withCart + line.loose;
    const word = line.difference < 0 ? `${-line.difference} too few` : `${line.difference} too many`;
    return `${line.item} (${line.model}): ${travelling} travel, ${line.staysInBox} stay in their box, ${line.fitted} are fitted, ${word}.`;
  });
  const why = 'A box or cart of the design was not found, or a box brings other pins than its joint takes.';
  return [
    say('hardware', 'stop', 'travelling-and-fitted-differ', lines.map((line) => line.model).join(', '), null, [...each, why].join(' ')),
  ];
}

/** Frames have no stock on file, and no pins of their own. */
function frames(inputs: PlanInputs): Finding[] {
  const joints = inputs.hangs.flatMap((hang) =>
    hang.boxes.slice(1).flatMap((box, index) => adapterBetween(inputs.file.systems, hang.boxes[index]!.model, box.model)?.id ?? []),
  );
  return [...new Set(joints)].map((id) => {
    const count = joints.filter((each) => each === id).length;
    return say(
      'hardware',
      'look',
      'frame-not-counted',
      id,
      null,
      `${plural(count, 'frame')} ${id} with the pins of the joint above each: no stock of frames is on file. Count them by hand.`,
    );
  });
}

function chains(inputs: PlanInputs, { chains: all }: HardwareResult): Finding[] {
  const short = all
    .filter((each) => !each.enough)
    .map((each) =>
      say(
        'hardware',
        'stop',
        'chain-too-short',
        `${each.hang} hole ${each.hole}`,
        null,
        `${each.hang}, hole ${each.hole}: ${each.serial ?? each.hoist} has ${each.onFileM} m of chain on file and needs ${each.neededM.toFixed(1)} m ${
          each.pointHeightMm === null ? 'for the trim height alone' : 'from its point to the floor'
        }.`,
      ),
    );
  const unknown = [...new Set(all.filter((each) => each.pointHeightMm === null).map((each) => each.hang))];
  return unknown.length === 0
    ? short
    : [
        ...short,
        say(
          'hardware',
          'look',
          'no-point-height',
          inputs.show.name,
          null,
          `No height of the points on file for ${plural(unknown.length, 'hang')} (${unknown.join(', ')}): the chain was compared with the trim height only.`,
        ),
      ];
}
