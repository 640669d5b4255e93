import type { EntityManager } from 'typeorm';
import { type BadInput, canonicalJson, textHash } from '#kernel';
import { type FieldChange, shownValue } from '#editions';
import type { Examination } from '#tour-file';
import type { ProposedKind, WaitingFact } from '#trade';
import { type Author, type SignedIn, authorId } from '../../platform/sign-in/person.js';
import type { KeptChange } from './rows.js';

/** Whose change it is: the house's own set-up and the safety officer's hold at once, everybody else's permissive ones wait. */
export type Hand = 'house' | 'officer' | 'other';

export const handOf = (who: Author | SignedIn): Hand => ('role' in who ? (who.role === 'safety' ? 'officer' : 'other') : 'house');

/** What a change is about. */
export interface Guarded {
  readonly kind: ProposedKind;
  readonly subject: string;
}

/** A proposal to be kept; `field` is empty for the thing as a whole. */
export interface NewProposal extends Guarded {
  readonly field: string;
  readonly was?: unknown;
  readonly wanted?: unknown;
}

export interface NewEdition extends Guarded {
  readonly changes: readonly KeptChange[];
}

export const subjectOfModel = (kind: string, model: string): string => `${kind}/${model}`;

/** An examination that counts once it is accepted. */
export const proposedRecord = (item: string, examination: Examination): NewProposal => ({
  kind: 'record',
  subject: item,
  field: textHash(canonicalJson(examination)),
  wanted: examination,
});

export const proposedFields = (of: Guarded, waits: readonly FieldChange[]): NewProposal[] =>
  waits.map(({ field, was, wanted }) => ({ ...of, field, was, wanted }));

/** What is said of a proposal: code and figures. */
export function waitingFact({ kind, subject, field, was, wanted }: NewProposal): WaitingFact {
  const id = kind === 'model' ? subject.slice(subject.indexOf('/') + 1) : subject;
  if (kind === 'record') {
    const { on, report } = wanted as Examination;
    return { code: 'examination', item: id, on, report: report ?? null };
  }
  if (field === '') return { code: 'new', of: kind, id };
  return { code: 'changed', of: kind, id, field, was: shownValue(was), wanted: shownValue(wanted) };
}

const json = (value: unknown): string | null => (value === undefined || value === null ? null : JSON.stringify(value));

/** Keeps what is proposed. The same again is kept once; another value for the same field takes the place of the one that waits. */
export async function propose(
  manager: EntityManager,
  who: Author,
  at: Date,
  reason: string,
  proposals: readonly NewProposal[],
): Promise<void> {
  if (proposals.length === 0) return;
  const given = [
    ...(['kind', 'subject', 'field'] as const).map((key) => proposals.map((each) => each[key])),
    proposals.map((each) => json(each.wanted)),
  ];
  await manager.query(
    `UPDATE proposal SET state = 'replaced', decided_at = $5 FROM unnest($1::text[], $2::text[], $3::text[], $4::jsonb[]) AS given (kind, subject, field, wanted)
     WHERE proposal.state = 'proposed' AND (proposal.kind, proposal.subject, proposal.field) = (given.kind, given.subject, given.field)
       AND proposal.wanted IS DISTINCT FROM given.wanted`,
    [...given, at],
  );
  await manager.query(
    `INSERT INTO proposal (kind, subject, field, wanted, was, reason, proposed_by_id, proposed_at, state)
     SELECT kind, subject, field, wanted, was, $6, $7, $8, 'proposed'
     FROM unnest($1::text[], $2::text[], $3::text[], $4::jsonb[], $5::jsonb[]) WITH ORDINALITY AS given (kind, subject, field, wanted, was, number)
     ORDER BY number ON CONFLICT (kind, subject, field) WHERE state = 'proposed' DO NOTHING`,
    [...given, proposals.map((each) => json(each.was)), reason.trim() || null, authorId(who), at],
  );
}

/** Keeps what was before: an edition a thing. What was proposed of the same fields no longer waits. */
export async function keepEditions(
  manager: EntityManager,
  who: Author,
  at: Date,
  reason: string,
  editions: readonly NewEdition[],
): Promise<void> {
  const kept = editions.filter((each) => each.changes.length > 0);
  if (kept.length === 0) return;
  const fields = kept.flatMap(({ kind, subject, changes }) => changes.map(({ field }) => ({ kind, subject, field })));
  await manager.query(
    `UPDATE proposal SET state = 'replaced', decided_at = $4 FROM unnest($1::text[], $2::text[], $3::text[]) AS given (kind, subject, field)
     WHERE proposal.state = 'proposed' AND (proposal.kind, proposal.subject, proposal.field) = (given.kind, given.subject, given.field)`,
    [...(['kind', 'subject', 'field'] as const).map((key) => fields.map((each) => each[key])), at],
  );
  await insertEditions(manager, who, at, reason, kept);
}

/** An edition a thing, numbered on; gives their ids in the order given. */
export async function insertEditions(
  manager: EntityManager,
  who: Author,
  at: Date,
  reason: string,
  kept: readonly NewEdition[],
): Promise<readonly string[]> {
  const rows: { id: string }[] = await manager.query(
    `INSERT INTO edition (kind, subject, number, changes, reason, made_by_id, made_at)
     SELECT kind, subject, 1 + coalesce((SELECT max(edition.number) FROM edition WHERE (edition.kind, edition.subject) = (given.kind, given.subject)), 0), changes, $4, $5, $6
     FROM unnest($1::text[], $2::text[], $3::jsonb[]) WITH ORDINALITY AS given (kind, subject, changes, ordinal) ORDER BY ordinal RETURNING id`,
    [
      kept.map((each) => each.kind),
      kept.map((each) => each.subject),
      kept.map((each) => JSON.stringify(each.changes.map(({ field, was, wanted }) => ({ field, was, wanted })))),
      reason.trim() || null,
      authorId(who),
      at,
    ],
  );
  return rows.map((row) => row.id);
}

/** Of whom something waits that would vouch for it. */
export async function vouchedByProposals(manager: EntityManager, items: readonly string[]): Promise<ReadonlySet<string>> {
  const rows: { subject: string }[] = await manager.query(
    `SELECT DISTINCT subject FROM proposal WHERE state = 'proposed' AND (kind = 'record' OR kind = 'item' AND field = 'declaredOn') AND subject = ANY($1)`,
    [items],
  );
  return new Set(rows.map((row) => row.subject));
}

/** What the safety officer has to say beside a change that lets more pass than before. */
export const reasonFaults = (hand: Hand, changes: readonly FieldChange[], reason: string): readonly BadInput[] =>
  hand === 'officer' && reason.trim() === '' && changes.some((each) => each.direction === 'permissive')
    ? [
        {
          field: 'reason',
          value: reason,
          wanted: `why ${changes
            .filter((each) => each.direction === 'permissive')
            .map((each) => each.field)
            .join(', ')} may be otherwise: it is kept with the edition`,
        },
      ]
    : [];
