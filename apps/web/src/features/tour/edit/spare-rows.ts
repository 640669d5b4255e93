import { z } from 'zod';
import type { SpareSetting } from '#tour-file';
import { figure, figureOrNothing } from '../../../ui/typed.js';

const level = figureOrNothing('a percentage over 0 and under 100, or nothing', { over: 0, under: 100 });

/** One line of the spares form, as typed. A filed loss per use is written as losses in 1,000 uses. */
const spareRow = z
  .object({
    item: z.string(),
    losses: figure('a number from 0', { min: 0 }),
    uses: figure('a number over 0', { over: 0 }),
    learns: z.boolean(),
    level,
    stopsAShow: z.boolean(),
  })
  .refine((row) => !row.learns || row.losses > 0, { path: ['losses'], message: 'a number over 0: nothing is learned from nought' });

export const typedSpares = z.object({ level, least: z.enum(['mass', 'cost']), rows: z.array(spareRow) });

type Read = z.output<typeof spareRow>;

const text = (value: number): string => String(Number(value.toPrecision(12)));

export const rowOf = ({ item, lossPerUse, prior, level: own, stopsAShow }: SpareSetting): z.input<typeof spareRow> => ({
  item,
  losses: text(lossPerUse === undefined ? (prior?.losses ?? 0) : lossPerUse * 1000),
  uses: text(lossPerUse === undefined ? (prior?.uses ?? 0) : 1000),
  learns: lossPerUse === undefined,
  level: own === undefined ? '' : text(own * 100),
  stopsAShow,
});

/** As a tour keeps them; what was counted before stays with a line that still learns. */
export const sparesOf = (rows: readonly Read[], before: readonly SpareSetting[]): SpareSetting[] =>
  rows.map(({ item, losses, uses, learns, level: own, stopsAShow }) => {
    const counted = before.find((each) => each.item === item)?.counted;
    return {
      item,
      ...(learns ? { prior: { losses, uses }, ...(counted ? { counted } : {}) } : { lossPerUse: losses / uses }),
      ...(own === undefined ? {} : { level: own / 100 }),
      stopsAShow,
    };
  });

/** Where a fault of the saved tour belongs in the form. */
export function fieldOfSpares(path: string): string | undefined {
  if (path.includes('spareTrunk.')) return path.endsWith('least') ? 'least' : 'level';
  const [, index, part] = /spares\[(\d+)\]\.(?:\w+\.)*(\w+)$/.exec(path) ?? [];
  if (index === undefined || part === undefined) return undefined;
  return `rows.${index}.${part === 'lossPerUse' ? 'losses' : part}`;
}
