import type { BadInput } from '#kernel';

/** Collects faults; the first two hundred are told. */
export class FaultList {
  readonly faults: BadInput[] = [];

  add(field: string, value: unknown, wanted: string): void {
    if (this.faults.length < 200) this.faults.push({ field, value: value === undefined ? null : value, wanted });
  }

  /** `wanted` when the value is not among the known names, with the near ones offered. */
  unknown(field: string, value: string, known: ReadonlySet<string> | ReadonlyMap<string, unknown>, what: string): boolean {
    if (known.has(value)) return false;
    const names = [...known.keys()];
    const near = names.filter((each) => each.toLowerCase().startsWith(value.slice(0, 2).toLowerCase())).slice(0, 5);
    const offered = near.length > 0 ? near : names.slice(0, 5);
    this.add(
      field,
      value,
      names.length === 0 ? `${what} on file (there is none yet)` : `${what} on file, for example ${offered.join(', ')}`,
    );
    return true;
  }

  range(field: string, from: string, to: string): boolean {
    if (from <= to) return false;
    this.add(field, `${from} to ${to}`, 'the first day no later than the last');
    return true;
  }

  twice(field: string, value: string, seen: Set<string>, what: string): void {
    if (seen.has(value)) this.add(field, value, `${what} only once`);
    seen.add(value);
  }
}
