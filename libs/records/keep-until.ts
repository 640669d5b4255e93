import { type PlainDate, addPeriod, readPeriod } from '#kernel';
import type { Examination, ExaminationRule } from '#tour-file';
import type { KeptUntil } from '#trade';

export interface Kept {
  readonly until: KeptUntil;
  /** Where it stands that it is kept so long; empty where no rule says. */
  readonly sources: readonly string[];
}

/**
 * Until when a record is kept, by the rules it was made under: the latest that any of them asks for. `nextReportOn`: the day of the report that came
 * after it; null while there is none.
 */
export function keepUntil(record: Examination, rules: readonly ExaminationRule[], nextReportOn: PlainDate | null): Kept {
  const asking = rules.filter((rule) => rule.retention);
  const from = record.particulars?.reportOn ?? record.on;
  const days = asking.flatMap(({ retention }) => {
    const period = readPeriod(retention?.atLeast ?? '');
    return period ? [addPeriod(from, period)] : [];
  });
  const asksNext = asking.some(({ retention }) => retention?.untilNextReport);
  if (asksNext && nextReportOn !== null) days.push(nextReportOn);
  const latest = days.sort().at(-1) ?? null;
  const sources = [...new Set(asking.map(({ retention }) => retention?.source ?? ''))];
  if (asking.some(({ retention }) => retention?.whileInUse)) return { until: { code: 'in-use', atLeast: latest }, sources };
  if (asksNext && nextReportOn === null) return { until: { code: 'next-report', atLeast: latest }, sources };
  return { until: latest === null ? { code: 'not-said' } : { code: 'day', on: latest }, sources };
}
