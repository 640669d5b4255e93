import type { RiggingSystem, RunningStep } from '#tour-file';

const lines = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
/** A step as a line: where it stands and whether it is a hold, a colon, the sentence. */
export const lineOf = (step: RunningStep): string => {
  if (typeof step === 'string') return step;
  const moments = step.moments?.length ? `, ${step.moments.join(' + ')}` : '';
  return `${step.at}${step.hold ? ', hold' : ''}${moments}: ${step.step}${step.why === undefined ? '' : ` | ${step.why}`}`;
};

function stepOf(line: string): RunningStep {
  const read = /^(start|first cart|further carts|each cart|end)(, hold)?(?:, ([a-z +]+))?: (.+?)(?: \| (.+))?$/.exec(line);
  if (!read) return line;
  const [, at, hold, moments, step, why] = read;
  return {
    step: step ?? '',
    at: at as 'start',
    hold: hold !== undefined,
    ...(why === undefined ? {} : { why }),
    ...(moments === undefined ? {} : { moments: moments.split(' + ') as NonNullable<Exclude<RunningStep, string>['moments']> }),
  };
}

type Frame = NonNullable<RiggingSystem['adapters']>[number];
const frameFigures = ['massKg', 'frontHeightMm', 'rearHeightMm', 'depthMm', 'cgBehindMm', 'cgBelowMm', 'rearLeverMm'] as const;
const frameLine = (frame: Frame): string =>
  [frame.id, ...frame.joins, ...frameFigures.map((key) => frame[key]), ...(frame.model === undefined ? [] : [frame.model])].join('; ');

function frameOf(line: string): object {
  const [id, upper, lower, ...figures] = line.split(';').map((each) => each.trim());
  const model = figures[frameFigures.length];
  return {
    id,
    joins: [upper, lower],
    ...Object.fromEntries(frameFigures.map((key, index) => [key, numberOrNone(figures[index] ?? '')])),
    ...(model === undefined || model === '' ? {} : { model }),
  };
}

const numberOrNone = (text: string): number | string | undefined =>
  text.trim() === '' ? undefined : Number.isFinite(Number(text)) ? Number(text) : text;

/** What a new one begins with: nothing that a manual has not said. */
export const emptySystem = {
  id: '',
  title: '',
  revision: '',
  splaySetAt: '',
  jointBetweenCarts: '',
  gridJoint: '',
  cartJoints: '',
  closedSplayDeg: '',
  adapters: '',
  tagLines: '',
  mostBoxes: '',
  mostMassKg: '',
  mostNoseUpDeg: '',
  mostNoseDownDeg: '',
  windLimitMps: '',
  goingUp: '',
  comingDown: '',
};
export type SystemText = typeof emptySystem;

export const systemText = (system: RiggingSystem): SystemText => ({
  id: system.id,
  title: system.manual.title,
  revision: system.manual.revision,
  splaySetAt: system.splaySetAt,
  jointBetweenCarts: system.jointBetweenCarts,
  gridJoint: system.closing?.gridJoint ?? '',
  cartJoints: system.closing?.cartJoints ?? '',
  closedSplayDeg: String(system.closedSplayDeg ?? ''),
  adapters: (system.adapters ?? []).map(frameLine).join('\n'),
  tagLines: (system.tagLines ?? []).join('; '),
  mostBoxes: String(system.mostBoxes ?? ''),
  mostMassKg: String(system.mostMassKg ?? ''),
  mostNoseUpDeg: String(system.mostNoseUpDeg ?? ''),
  mostNoseDownDeg: String(system.mostNoseDownDeg ?? ''),
  windLimitMps: String(system.windLimitMps ?? ''),
  goingUp: system.goingUp.map(lineOf).join('\n'),
  comingDown: system.comingDown.map(lineOf).join('\n'),
});

/** What is sent: checked where it is kept, not here. A new one says where its joints close; one on file that never said so stays as it is. */
export const systemFrom = (values: SystemText, isNew: boolean): object =>
  JSON.parse(
    JSON.stringify({
      id: values.id.trim(),
      manual: { title: values.title, revision: values.revision },
      closedSplayDeg: numberOrNone(values.closedSplayDeg),
      adapters: values.adapters.trim() === '' ? undefined : lines(values.adapters).map(frameOf),
      tagLines: values.tagLines.trim() === '' ? undefined : lines(values.tagLines.replaceAll(';', '\n')),
      splaySetAt: values.splaySetAt,
      jointBetweenCarts: values.jointBetweenCarts,
      closing: isNew || values.gridJoint || values.cartJoints ? { gridJoint: values.gridJoint, cartJoints: values.cartJoints } : undefined,
      mostBoxes: numberOrNone(values.mostBoxes),
      mostMassKg: numberOrNone(values.mostMassKg),
      mostNoseUpDeg: numberOrNone(values.mostNoseUpDeg),
      mostNoseDownDeg: numberOrNone(values.mostNoseDownDeg),
      windLimitMps: numberOrNone(values.windLimitMps),
      goingUp: lines(values.goingUp).map(stepOf),
      comingDown: lines(values.comingDown).map(stepOf),
    }),
  ) as object;
