import { groupDigits } from '#kernel';
import { type Finding, type TruckResult, say } from '../contract/index.js';

const kilograms = (value: number): string => `${groupDigits(value)} kg`;
const tonnes = (value: number): string => `${(value / 1000).toFixed(1)} t`;

/** What takes load off an axle, where moving a case does. */
function remedyFor(axle: string): string {
  if (axle === 'gross mass') return '';
  return ` One heavy case further ${axle === 'trailer axles' || axle === 'rear axle' ? 'forward' : 'back'} takes load off it.`;
}

/** Share of a limit from which an axle is called nearly over. */
const nearly = 0.93;

export function truckFindings(truck: TruckResult): Finding[] {
  const findings = [
    ...(truck.refused ?? []).map((sentence) => say('truck', 'stop', 'kept-breaks-rule', 'kept', null, sentence)),
    ...truck.leftOver.map((each) => say('truck', 'stop', 'left-over', each.id, null, `${each.label} finds no place: ${each.reason}.`)),
    ...(truck.notes ?? [])
      .filter((each) => each.kind === 'waived' || each.kind === 'without effect')
      .map((each) =>
        say('truck', 'look', each.kind === 'waived' ? 'order-waived' : 'wish-without-effect', each.subject, null, each.sentence),
      ),
  ];
  for (const load of truck.trucks) {
    for (const axle of load.axles) {
      if (axle.limitKg === null || axle.axle === 'kingpin') continue;
      const worst = axle.loadKg;
      if (worst > axle.limitKg)
        findings.push(
          say(
            'truck',
            'stop',
            'axle-over',
            `${load.id} ${axle.axle}`,
            null,
            `${load.id}: ${axle.axle} ${tonnes(worst)}, over its limit of ${tonnes(axle.limitKg)}.`,
          ),
        );
      else if (worst >= nearly * axle.limitKg)
        findings.push(
          say(
            'truck',
            'look',
            'axle-nearly-over',
            `${load.id} ${axle.axle}`,
            null,
            `${load.id}: ${axle.axle} ${tonnes(worst)} of ${tonnes(axle.limitKg)}, ${kilograms(axle.limitKg - worst)} left.${remedyFor(axle.axle)}`,
          ),
        );
    }
    if (load.axles.length === 0)
      findings.push(
        say('truck', 'look', 'no-axle-figures', load.id, null, `${load.id}: no axle figures on file; its axle loads are not known.`),
      );
    if (load.bridge)
      findings.push(
        say(
          'truck',
          load.bridge.status === 'within' ? 'agrees' : load.bridge.status === 'over' ? 'stop' : 'look',
          load.bridge.status === 'over' ? 'bridge-formula-over' : 'bridge-formula',
          load.id,
          null,
          `${load.id}: ${load.bridge.sentence}`,
        ),
      );
    for (const each of load.placements.filter((one) => one.tag !== null))
      findings.push(say('truck', 'look', 'tagged-freight', each.id, null, `${each.label} ${each.tag}.`));
  }
  return findings;
}
