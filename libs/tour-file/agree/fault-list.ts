import type { BadInput } from '#kernel';

/** Collects faults; the first two hundred are told, unless more are asked for. */
export class FaultList {
  readonly faults: BadInput[] = [];

  private readonly offers = new Map<object, Map<string, string>>();

  constructor(private readonly most = 200) {}

  add(field: string, value: unknown, wanted: string): void {
    if (this.faults.length < this.most) this.faults.push({ field, value: value === undefined ? null : value, wanted });
  }

  /** `wanted` when the value is not among the known names, with the near ones offered. */
  unknown(field: string, value: string, known: ReadonlySet<string> | ReadonlyMap<string, unknown>, what: string): boolean {
    if (known.has(value)) return false;
    this.add(field, value, `${what} on file${this.offered(known, value.slice(0, 2).toLowerCase())}`);
    return true;
  }

  /** Names that begin alike, or the first ones; looked for once, however many faults ask. */
  private offered(known: ReadonlySet<string> | ReadonlyMap<string, unknown>, beginning: string): string {
    const found = this.offers.get(known)?.get(beginning);
    if (found !== undefined) return found;
    const names = [...known.keys()];
    const near = names.filter((each) => each.toLowerCase().startsWith(beginning)).slice(0, 5);
    const offered = near.length > 0 ? near : names.slice(0, 5);
    const sentence = names.length === 0 ? ' (there is none yet)' : `, for example ${offered.join(', ')}`;
    this.offers.set(known, (this.offers.get(known) ?? new Map<string, string>()).set(beginning, sentence));
    return sentence;
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
