import { z } from 'zod';

export const backupFormat = 'cartwright backup 1';
export const manifestName = 'manifest.json';
export const partName = (table: string, part: number): string => `tables/${table}/${String(part).padStart(6, '0')}.copy`;

const wholeNumber = z.number().int().min(0);

/** What a backup says of itself; its last part. */
export const manifestSchema = z.object({
  format: z.literal(backupFormat),
  madeAt: z.iso.datetime(),
  version: z.string(),
  postgres: z.string(),
  /** The changes of shape that the house had seen, in their order: with them its tables are made again. */
  migrations: z.array(z.string()).min(1),
  tables: z.array(
    z.object({
      name: z.string(),
      columns: z.array(z.string()).min(1),
      order: z.array(z.string()).min(1),
      rows: wholeNumber,
      bytes: wholeNumber,
      /** Of the table's rows as they stand in its parts, one after the other. */
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
    }),
  ),
  sequences: z.array(z.object({ name: z.string(), value: z.string().regex(/^-?\d+$/), isCalled: z.boolean() })),
  leftOut: z.array(z.string()),
  /** The head of the log that is in it: what `verify-log` takes. Backups from before seals have none. */
  log: z.object({ head: z.string(), lines: wholeNumber, sealedAt: z.iso.datetime() }).optional(),
});

export type Manifest = z.infer<typeof manifestSchema>;
