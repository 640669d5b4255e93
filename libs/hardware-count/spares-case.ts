import { z } from 'zod';
import { type BadInput, type Result, ok, quantity, readInput, refuse, wholeQuantity } from '#kernel';
import { type LossModel, meanLosses } from './loss-model.js';

const record = z.strictObject({ losses: quantity('losses'), uses: quantity('pieceUses') });

/** One line of a spares case: `lossPerUse`, or what was believed (`prior`) and what was `counted` since. */
export const sparesLineSchema = z.strictObject({
  item: z.string().min(1).max(200),
  installed: wholeQuantity('pieces'),
  uses: quantity('uses'),
  lossPerUse: quantity('share').optional(),
  prior: record.optional(),
  counted: record.optional(),
  level: z.number().gt(0).lt(1),
});

export const sparesCaseSchema = z.strictObject({ lines: z.array(sparesLineSchema).max(10_000) });

export type SparesLine = z.output<typeof sparesLineSchema>;
declare const wasRead: unique symbol;

/** Lines whose losses can be computed: only `readSparesCase` gives them. */
export type SparesCase = z.output<typeof sparesCaseSchema> & { readonly [wasRead]: true };

/** Above this many expected losses a line is a mistake, not a tour. */
const mostExpectedLosses = 1e9;

/** The law of the losses of one line over its uses (units: piece-uses = installed x uses). */
export function lossModelOf(line: SparesLine): LossModel {
  const pieceUses = line.installed * line.uses;
  if (line.lossPerUse !== undefined) return { kind: 'poisson', mean: pieceUses * line.lossPerUse };
  return {
    kind: 'gamma-poisson',
    shape: (line.prior?.losses ?? 0) + (line.counted?.losses ?? 0),
    rate: (line.prior?.uses ?? 0) + (line.counted?.uses ?? 0),
    pieceUses,
  };
}

/** Reads a spares case; every fault is named with field, value and what would be right. */
export function readSparesCase(input: unknown): Result<SparesCase, readonly BadInput[]> {
  const read = readInput(sparesCaseSchema, input);
  if (!read.ok) return read;
  const faults = read.value.lines.flatMap((line, index) => faultOf(line, `lines[${index}]`));
  return faults.length > 0 ? refuse(faults) : ok(read.value as SparesCase);
}

function faultOf(line: SparesLine, field: string): BadInput[] {
  if (line.lossPerUse !== undefined) {
    if (line.prior !== undefined || line.counted !== undefined)
      return [{ field: `${field}.lossPerUse`, value: line.lossPerUse, wanted: 'either lossPerUse, or prior and counted, not both' }];
  } else if (line.prior === undefined) {
    return [{ field: `${field}.lossPerUse`, value: null, wanted: 'lossPerUse, or prior {losses, uses} with what was counted' }];
  }
  const model = lossModelOf(line);
  if (model.kind === 'gamma-poisson' && model.rate < 1e-6)
    return [
      { field: `${field}.prior.uses`, value: line.prior?.uses ?? null, wanted: 'more than 0 piece-uses in prior and counted together' },
    ];
  if (model.kind === 'gamma-poisson' && model.shape < 1e-6)
    return [
      { field: `${field}.prior.losses`, value: line.prior?.losses ?? null, wanted: 'more than 0 losses in prior and counted together' },
    ];
  const mean = meanLosses(model);
  if (mean > mostExpectedLosses) return [{ field, value: mean, wanted: `expected losses of at most ${mostExpectedLosses}` }];
  return [];
}
