import type { HangResult, RunningOrderStep } from '#pack-plan';
import { type Node, type Units, node } from '../tree/index.js';
import { stepWords } from './step-words.js';
import { type SheetContext, caution, mono, sheet, table, tickBox } from '../paper/index.js';

export const riggingCaution =
  'The maker’s manual comes first. Nobody stands below. Nothing leaves the ground, and nothing is taken out, until the person in charge of lifting says so.';

/** The lift sequence of one hang, up and down: holds to tick and sign, the other steps to read; without approval an example that is not for use. */
export function runningSheets(context: SheetContext, hang: HangResult, units: Units = 'metric'): readonly Node[] {
  const { runningOrder } = hang;
  const approval = runningOrder.approved
    ? `${runningOrder.manual ?? ''}. Approved by ${runningOrder.approved}.`
    : `${runningOrder.manual ?? 'No rigging system on file'}. Not approved by the safety officer.`;
  const page = (title: string, steps: readonly RunningOrderStep[], record: Node | null) =>
    sheet(
      { ...context, of: hang.hang },
      `${hang.name}, ${title}`,
      `${hang.boxes.length} boxes, ${new Set(steps.flatMap((each) => each.load?.id ?? [])).size} cart loads`,
      node('p', { class: runningOrder.approved ? '' : 'stop' }, approval),
      table(
        ['', 'Step', 'Signed'],
        steps.flatMap((step, index) => rowsOf(step, steps[index - 1], units)),
      ),
      caution(riggingCaution),
      record,
    );
  return [page('going up', runningOrder.goingUp, handover()), page('coming down', runningOrder.comingDown, null)];
}

function rowsOf(step: RunningOrderStep, before: RunningOrderStep | undefined, units: Units): (string | Node)[][] {
  const head =
    step.load && step.load.id !== before?.load?.id
      ? [
          [
            '',
            node('b', {}, `${step.load.id}: cart `, mono(step.load.cart ?? 'none found'), node('small', {}, ` splays ${step.load.splays}`)),
            '',
          ],
        ]
      : [];
  const beside = stepWords(step, units).map((each) => node('small', {}, node('br'), each));
  const text = node('span', {}, step.hold ? node('b', {}, `HOLD. ${step.text}`) : step.text, ...beside);
  return [...head, [step.hold ? tickBox() : '', text, step.hold ? '____________' : '']];
}

function handover(): Node {
  return node(
    'div',
    {},
    node('h2', {}, 'Inspection after assembly, and handover'),
    node(
      'p',
      {},
      'Inspected from below and signed by a person who did not build it; then handed over. Remarks: ______________________________',
    ),
    node(
      'div',
      { class: 'sign' },
      node('span', {}, 'Inspected by, name, date and time'),
      node('span', {}, 'Handed over by'),
      node('span', {}, 'Taken over by'),
    ),
  );
}
