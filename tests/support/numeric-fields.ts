/** A JSON Schema, as far as numbers in it are looked for. */
export interface Schema {
  readonly $ref?: string;
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly additionalProperties?: Schema | boolean;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
  readonly $defs?: Readonly<Record<string, Schema>>;
}

/** A number in a file: its place with [] for each list, and what the schema says of it. */
export interface NumericField {
  readonly path: string;
  readonly schema: Schema;
}

/** Every number that a file of this schema may hold. */
export function numericFields(schema: Schema, path = '', root: Schema = schema): NumericField[] {
  const whole = schema.$ref ? (root.$defs?.[schema.$ref.replace('#/$defs/', '')] ?? schema) : schema;
  if (whole.type === 'number' || whole.type === 'integer') return [{ path, schema: whole }];
  return [
    ...Object.entries(whole.properties ?? {}).flatMap(([name, each]) => numericFields(each, path ? `${path}.${name}` : name, root)),
    ...(whole.items ? numericFields(whole.items, `${path}[]`, root) : []),
    ...(whole.anyOf ?? []).flatMap((each) => numericFields(each, path, root)),
  ];
}

type Holder = Record<string | number, unknown>;

/** A copy of a file with one number another, and where that stands; undefined where the file has no such place. */
export function withNumber(file: unknown, path: string, value: unknown): { readonly file: unknown; readonly field: string } | undefined {
  const copy: unknown = structuredClone(file);
  const field = put(copy, path.match(/[^.[\]]+|\[\]/g) ?? [], value, '');
  return field === undefined ? undefined : { file: copy, field };
}

function put(at: unknown, [step, ...rest]: readonly string[], value: unknown, field: string): string | undefined {
  if (typeof at !== 'object' || at === null || step === undefined) return undefined;
  const keys: (string | number)[] = step === '[]' ? [...(at as unknown[]).keys()] : [step];
  for (const key of keys) {
    const here = typeof key === 'number' ? `${field}[${key}]` : field ? `${field}.${key}` : key;
    if (rest.length === 0) {
      (at as Holder)[key] = value;
      return here;
    }
    const found = put((at as Holder)[key], rest, value, here);
    if (found !== undefined) return found;
  }
  return undefined;
}
