import { legSteel } from '#tour-file';
import type { BareLine, PickFinding } from '#trade';
import type { HangResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { hangOf, pickOf } from './compared-findings.js';

type Steel = { readonly shackles: readonly string[]; readonly slings: readonly string[] };
const isBare = (steel: Steel | undefined): boolean => steel !== undefined && steel.shackles.length + steel.slings.length === 0;

/** Lines that are planned without a piece of steel on file: nothing is compared and nothing counted. */
export function bareLines(inputs: PlanInputs, result: HangResult): PickFinding[] {
  const hang = inputs.hangs.find((each) => each.id === result.hang)!;
  const lines: BareLine[] = [
    ...hang.picks.filter(isBare).map(({ hole }) => ({ code: 'pick' as const, hole })),
    ...hang.picks.filter(({ bridle }) => bridle && legSteel(bridle).some(isBare)).map(({ hole }) => ({ code: 'bridle' as const, hole })),
    ...(isBare(hang.secondary) ? [{ code: 'secondary' as const }] : []),
    ...(isBare(hang.pullBack) ? [{ code: 'pull-back' as const }] : []),
  ];
  return lines.length === 0 ? [] : [{ code: 'no-steel', subjects: { hang: hangOf(result) }, numbers: {}, date: null, lines }];
}

/** What a hang exceeds of the limits of its rigging system: most boxes, most mass. */
export function systemLimits({ file }: PlanInputs, hang: HangResult): PickFinding[] {
  const found = file.systems.find((each) => each.id === hang.system);
  const subjects = { hang: hangOf(hang), system: { kind: 'system' as const, id: hang.system } };
  const of = (numbers: { boxes: number; mostBoxes: number } | { massKg: number; mostMassKg: number }): PickFinding =>
    ({ code: 'system-limit', subjects, numbers, date: null }) as PickFinding;
  return [
    ...(found?.mostBoxes !== undefined && hang.boxes.length > found.mostBoxes
      ? [of({ boxes: hang.boxes.length, mostBoxes: found.mostBoxes })]
      : []),
    ...(found?.mostMassKg !== undefined && hang.massKg > found.mostMassKg
      ? [of({ massKg: hang.massKg, mostMassKg: found.mostMassKg })]
      : []),
  ];
}

export function systemFindings({ show }: PlanInputs, hang: HangResult): PickFinding[] {
  const system = { kind: 'system' as const, id: hang.system };
  return [
    ...(hang.systemApproved ? [] : [{ code: 'system-not-approved' as const, subjects: { system }, numbers: {}, date: null }]),
    ...(show.outdoor && hang.windLimitMps === null
      ? [{ code: 'no-wind-limit' as const, subjects: { hang: hangOf(hang), system }, numbers: {}, date: null }]
      : []),
  ];
}

/** Grids and hoists for which no serial is left. */
export function missingItems({ show, hangs, availability }: PlanInputs, hang: HangResult): PickFinding[] {
  const design = hangs.find((each) => each.id === hang.hang);
  const wanted = (id: string | undefined) =>
    id === undefined ? null : { id, why: availability.get(id)?.reason ?? { code: 'not-on-file' as const } };
  const hoists = hang.unshared?.hoists ?? hang.picks.map(({ hole, hoist, hoistSerial }) => ({ hole, hoist, serial: hoistSerial }));
  const places = [
    ...(hang.gridSerial === null ? [{ at: hangOf(hang), model: hang.grid, wanted: wanted(design?.gridSerial) }] : []),
    ...hoists
      .filter((each) => each.serial === null && design?.picks.find(({ hole }) => hole === each.hole)?.kitBy === undefined)
      .map(({ hole, hoist }) => ({
        at: pickOf(hang, hole),
        model: hoist,
        wanted: wanted(design?.picks.find((each) => each.hole === hole)?.hoistSerial),
      })),
  ];
  return places.map(({ at, model, wanted: named }) => ({
    code: 'item-missing',
    subjects: { at, model: { kind: 'model', id: model } },
    numbers: {},
    date: show.from,
    wanted: named,
  }));
}
