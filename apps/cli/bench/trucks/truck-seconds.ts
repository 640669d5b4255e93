import { Trouble } from '#runtime';
import { answer } from '../../engine/truck-pack.js';
import { readArguments, say } from '../arguments.js';
import { type LargeFleet, largeFleet, plainFirstFit } from './large-fleets.js';

/**
 * Large fleets as case files: each is answered within 1.5 times the seconds given, agrees with the checker, and carries no fewer pieces than a plain first fit by floor length:
 * [--seconds 1,3,10] [--fleets 500x8,2000x40,5000x100,5000x8]: pieces x trucks.
 */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const limits = (values.get('seconds') ?? '3').split(',').map(Number);
  const fleets = (values.get('fleets') ?? '500x8,2000x40,5000x100,2000x8,5000x8').split(',').map(fleetFrom);
  const rows = limits.flatMap((given) => fleets.map(([pieces, trucks]) => measured(largeFleet(pieces, trucks), given)));
  const bad = rows.filter((each) => !each.isInTime || each.rode < each.firstFit || each.mismatches > 0).length;
  say(JSON.stringify({ answers: rows.length, bad }));
  return bad === 0 ? 0 : 1;
}

function measured(fleet: LargeFleet, given: number) {
  const start = performance.now();
  const said = answer(fleet, { seconds: given, work: undefined });
  const took = (performance.now() - start) / 1000;
  if (!said.ok) throw new Trouble(`The case is refused: ${JSON.stringify(said.error[0])}`);
  const { leftOver, mismatch = [] } = said.value as { readonly leftOver: readonly unknown[]; readonly mismatch?: readonly unknown[] };
  const pieces = fleet.pieces.length;
  const row = {
    given,
    pieces,
    trucks: fleet.trucks.length,
    seconds: Number(took.toFixed(2)),
    rode: pieces - leftOver.length,
    firstFit: plainFirstFit(fleet),
    mismatches: mismatch.length,
    isInTime: took <= 1.5 * given,
  };
  say(JSON.stringify(row));
  return row;
}

function fleetFrom(text: string): [pieces: number, trucks: number] {
  const [, pieces, trucks] = /^(\d+)x(\d+)$/.exec(text) ?? [];
  if (!pieces || !trucks) throw new Trouble(`--fleets has ${text}: wanted pieces x trucks, as 500x8.`);
  return [Number(pieces), Number(trucks)];
}
