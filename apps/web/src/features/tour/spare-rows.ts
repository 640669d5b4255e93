import type { SpareSetting } from '#tour-file';

/** One line of the spares form, as typed. A filed loss per use is written as losses in 1,000 uses. */
export interface SpareRow {
  readonly item: string;
  readonly losses: string;
  readonly uses: string;
  readonly learns: boolean;
  readonly level: string;
  readonly stopsAShow: boolean;
}

const text = (value: number): string => String(Number(value.toPrecision(12)));

export const rowOf = ({ item, lossPerUse, prior, level, stopsAShow }: SpareSetting): SpareRow => ({
  item,
  losses: text(lossPerUse === undefined ? prior!.losses : lossPerUse * 1000),
  uses: text(lossPerUse === undefined ? prior!.uses : 1000),
  learns: lossPerUse === undefined,
  level: level === undefined ? '' : text(level * 100),
  stopsAShow,
});

/** As a tour keeps them; what was counted before stays with a line that still learns. */
export const sparesOf = (rows: readonly SpareRow[], before: readonly SpareSetting[]): SpareSetting[] =>
  rows.map(({ item, losses, uses, learns, level, stopsAShow }) => {
    const counted = before.find((each) => each.item === item)?.counted;
    return {
      item,
      ...(learns
        ? { prior: { losses: Number(losses), uses: Number(uses) }, ...(counted ? { counted } : {}) }
        : { lossPerUse: Number(losses) / Number(uses) }),
      ...(level.trim() === '' ? {} : { level: Number(level) / 100 }),
      stopsAShow,
    };
  });
