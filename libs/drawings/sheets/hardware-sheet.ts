import type { HardwareLine } from '#pack-plan';
import { type Node, type Units, formatLength, formatNumber, node, percent } from '../tree/index.js';
import { type SheetContext, caution, findingList, mono, sheet, table, tickBox } from '../paper/index.js';

/** The hardware of a show on paper: the list to tick, what rides with each cart, why so many spares, the chains. */
export function hardwareSheets(context: SheetContext, units: Units = 'metric'): readonly Node[] {
  const { hardware } = context.plan;
  return [
    checklist(context),
    ...(hardware.lines.some((line) => line.carriers.length > 0) ? [byCart(context)] : []),
    spares(context, units),
  ];
}

const nameOf = (line: HardwareLine): string => `${line.item} · ${line.model}${line.size ? ` · ${line.size}` : ''}`;

/** "8 of FP-1 in HT-1": what is taken from which lot; what rides with boxes and carts needs no trunk. */
export const takenWords = (line: HardwareLine): string =>
  line.takenFrom.length > 0
    ? line.takenFrom.map(({ lot, trunk, count }) => `${count} of ${lot}${trunk ? ` in ${trunk}` : ''}`).join(', ')
    : line.trunks.join(', ');

function checklist(context: SheetContext): Node {
  const { hardware, findings } = context.plan;
  const rows = hardware.lines.map((line) => [
    tickBox(),
    nameOf(line),
    { right: String(line.fitted) },
    { right: line.staysInBox > 0 ? `${line.withBox}, ${line.staysInBox} stay` : String(line.withBox) },
    { right: String(line.withCart) },
    { right: String(line.loose) },
    { right: String(line.spares) },
    { right: String(line.onHand) },
    { right: line.missing > 0 ? `${line.missing} missing` : '0' },
    takenWords(line),
  ]);
  return sheet(
    context,
    'Hardware',
    'Count into the trunk, tick each line',
    table(
      [
        '',
        'Piece',
        { right: 'Fitted' },
        { right: 'With box' },
        { right: 'With cart' },
        { right: 'Loose' },
        { right: 'Spare' },
        { right: 'On hand' },
        { right: 'Missing' },
        'Taken from',
      ],
      rows,
    ),
    node(
      'p',
      {},
      'With box, with cart and loose, less what stays in its box, is what is fitted. Spares come on top and are fitted nowhere.',
    ),
    node('h2', {}, 'Numbered items'),
    table(
      ['', 'Serial', 'Model', 'Where'],
      hardware.chosen.map((each) => [tickBox(), mono(each.item), each.model, each.where]),
    ),
    ...outOfUse(hardware.lines),
    findingList(findings, 'hardware'),
    caution(hardware.caution),
  );
}

/** What of the same models may not be used, and why: it may lie in the same case. */
export const notToBeUsed = (lines: readonly HardwareLine[]) => lines.flatMap((line) => line.outOfUse.map((each) => ({ ...each, line })));

function outOfUse(lines: readonly HardwareLine[]): readonly Node[] {
  const out = notToBeUsed(lines);
  if (out.length === 0) return [];
  return [
    node('h2', {}, 'Not to be used'),
    table(
      ['Out', 'Piece', { right: 'Pieces' }, 'Why'],
      out.map(({ lot, line, count, reason }) => [mono(`■ ${lot}`), `${line.item} · ${line.model}`, { right: String(count) }, reason]),
    ),
  ];
}

/** A row for each cart: count these before the lid goes on. */
function byCart(context: SheetContext): Node {
  const { hardware, carts } = context.plan;
  const carried = hardware.lines.filter((line) => line.carriers.length > 0);
  const countOf = (line: HardwareLine, load: string): number => line.carriers.find((each) => each.load === load)?.count ?? 0;
  return sheet(
    context,
    'Hardware with each cart',
    'Count before the lid goes on, tick each cart',
    table(
      ['', 'Cart', 'Load', ...carried.map((line) => ({ right: `${line.item}${line.size ? ` ${line.size}` : ''}` }))],
      carts.loads.map((load) => [
        tickBox(),
        mono(load.cart ?? 'none'),
        node('span', { class: 'line' }, load.id),
        ...carried.map((line) => ({ right: String(countOf(line, load.id)) })),
      ]),
    ),
    caution(hardware.caution),
  );
}

function spares(context: SheetContext, units: Units): Node {
  const { hardware } = context.plan;
  const { trunk } = hardware;
  const known = hardware.lines.filter((line) => line.levelReached !== null);
  const rows = known.map((line) => [
    nameOf(line),
    { right: String(line.spares) },
    { right: line.levelWanted === null ? 'the trunk’s' : percent(line.levelWanted) },
    { right: percent(line.levelReached!) },
    { right: line.pooling === null ? '' : `${line.pooling.together} / ${line.pooling.byHang} / ${line.pooling.byLeg}` },
    learnedWords(line),
  ]);
  const chains = hardware.chains.map((each) => [
    tickBox(),
    `${each.hangName}, hole ${each.hole}`,
    mono(each.serial ?? 'none found'),
    { right: metres(each.onFileM, units) },
    { right: `${metres(each.neededM, units)}${each.pointHeightMm === null ? ', trim only' : ''}` },
    { right: each.inBagAtTrimM === null ? 'not known' : metres(each.inBagAtTrimM, units) },
    each.enough ? 'long enough on file' : '■ too short',
  ]);
  return sheet(
    context,
    'Spares and chains',
    'Why so many, and what they are enough for',
    known.length === 0
      ? node('p', {}, 'No level is stated: no losses are on file.')
      : table(
          [
            'Piece',
            { right: 'Spare' },
            { right: 'Wanted' },
            { right: 'Enough for' },
            { right: 'One stock / by hang / by leg' },
            'Loss in 1,000 uses',
          ],
          rows,
        ),
    trunk.level === null
      ? null
      : node(
          'p',
          {},
          node('b', {}, `All lines with losses on file together: ${percent(trunk.level)} of tours without a shortage. `),
          trunk.sentence,
        ),
    node('p', {}, withoutLevel(hardware.lines)),
    ...zeroSpares(hardware.lines).map((each) => node('p', {}, node('b', {}, each.none), ` ${each.why}`)),
    node('h2', {}, 'Chain of each hoist'),
    table(['', 'Pick', 'Hoist', { right: 'Chain on file' }, { right: 'Needed' }, { right: 'In the bag at trim' }, ''], chains),
    caution(hardware.caution),
  );
}

/** "believed 0.25, counted 3 in 9,600: now 0.29; 5 spares by belief alone". */
export function learnedWords(line: HardwareLine): string {
  if (line.learned === null) return line.levelReached === null ? '' : 'as filed, not learned';
  const { priorMean, posteriorMean, counted, sparesByPriorAlone } = line.learned;
  const rate = (value: number): string => formatNumber(value * 1000, 2);
  if (counted.uses === 0) return `believed ${rate(priorMean)}, nothing counted yet`;
  return `believed ${rate(priorMean)}, counted ${counted.losses} in ${formatNumber(counted.uses)}: now ${rate(posteriorMean)}; ${sparesByPriorAlone} spare by belief alone`;
}

/** What none travels of as a spare, by kind, and why: a zero is a figure too. */
export function zeroSpares(lines: readonly HardwareLine[]): readonly { readonly none: string; readonly why: string }[] {
  return [true, false].flatMap((isKnown) => {
    const without = lines.filter((line) => line.spares === 0 && (line.levelReached !== null) === isKnown);
    if (without.length === 0) return [];
    const kinds = [...new Set(without.map((line) => line.item))];
    const named = kinds.map((item) => `${item}s: ${without.flatMap((line) => (line.item === item ? [line.model] : [])).join(', ')}`);
    const why = isKnown
      ? `With the losses on file 0 suffices for ${without.map((line) => percent(line.levelReached ?? 0)).join(', ')} of tours.`
      : 'The tour has no losses on file for them, so no number is worked out.';
    return [{ none: `0 spare ${named.join('; ')}.`, why }];
  });
}

function withoutLevel(lines: readonly HardwareLine[]): string {
  const silent = lines.filter((line) => line.levelReached === null).map((line) => line.item);
  return silent.length === 0
    ? 'Every line has losses on file.'
    : `No losses on file, so no level stated: ${[...new Set(silent)].join(', ')}.`;
}

const metres = (value: number, units: Units): string => formatLength(value * 1000, units);
