/** A number opened into its working: the terms that made it, the rule, the source of the rule. */
export interface Working {
  readonly terms: readonly { readonly what: string; readonly value: number; readonly unit: string }[];
  /** The sum with its figures put in, line by line, where it is written out. */
  readonly steps?: readonly string[];
  readonly rule: string;
  readonly source: string;
}
