import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type BadInput, daysBetween, isPlainDate } from '#kernel';
import { CLOCK, type Clock, dayIn } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotAllowedError, NotFoundError } from '../../platform/faults/fault.js';
import { givenPassword } from '../../platform/sign-in/given-password.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { AccountRow } from '../../platform/sign-in/rows.js';
import { SessionStore } from '../../platform/sign-in/session-store.js';
import type { DeputyInput, DeputyView } from './deputy.types.js';
import { DeputyRow } from './rows.js';

const longestDays = 366;

const list = `SELECT deputy.id, account_id AS "personId", person.name AS person, officer_id AS "officerId", officer.name AS officer, from_day::text AS "from",
  until_day::text AS until, depot, tour_id AS "tourId", tour.name AS tour, reason, named.name AS "namedBy",
  CASE WHEN withdrawn_at IS NOT NULL THEN 'withdrawn' WHEN today > until_day THEN 'over'
    WHEN officer.role <> 'safety' OR officer.disabled_at IS NOT NULL OR person.role = 'safety' OR person.disabled_at IS NOT NULL THEN 'void'
    WHEN signed_at IS NULL THEN 'to sign' WHEN today < from_day THEN 'to come' ELSE 'now' END AS state
FROM deputy JOIN account person ON person.id = account_id JOIN account officer ON officer.id = officer_id JOIN account named ON named.id = named_by_id
LEFT JOIN tour ON tour.id = tour_id CROSS JOIN LATERAL (SELECT ($1::timestamptz AT TIME ZONE deputy.time_zone)::date AS today) days
ORDER BY named_at DESC, deputy.id LIMIT 200`;

interface OnFile {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  /** Whose password is the own one, chosen under one that a safety officer gave. */
  readonly isOwnHand: boolean;
}

/** Who may act in the place of a safety officer: named by one, by days, for all or a part; of another officer by two. */
@Injectable()
export class DeputyService {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly sessions: SessionStore,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  list(): Promise<DeputyView[]> {
    return this.dataSource.query(list, [this.clock.now()]);
  }

  async name(input: DeputyInput, me: SignedIn): Promise<string> {
    const read = readInput(input);
    const given = read.password === null ? undefined : await givenPassword(read.password, this.clock);
    const id = randomUUID();
    await this.unitOfWork.run(async (manager) => {
      const people: OnFile[] = await manager.query(
        `SELECT id, name, role, password_by_officer AND NOT must_change AS "isOwnHand" FROM account WHERE id::text = ANY($1) AND disabled_at IS NULL AND left_number IS NULL`,
        [[read.personId, read.officerId]],
      );
      const person = people.find((each) => each.id === read.personId);
      const officer = people.find((each) => each.id === read.officerId && each.role === 'safety');
      const part = await this.partOf(manager, read);
      const faults = [...peopleFaults(read, person, officer), ...this.dayFaults(read), ...reasonFaults(read.reason), ...part.faults];
      if (faults.length > 0 || !person || !officer) throw new BadInputError(faults);
      await mustBeNew(manager, read);
      const at = this.clock.now();
      const isOwn = officer.id === me.id;
      await manager.getRepository(DeputyRow).insert({
        ...{ id, officerId: officer.id, accountId: person.id, fromDay: read.from, untilDay: read.until, timeZone: read.timeZone },
        ...{ depot: read.depot, tourId: read.tourId, reason: read.reason, namedById: me.id, namedAt: at },
        ...(isOwn ? { signedById: me.id, signedAt: at } : {}),
      });
      if (given) {
        await manager.getRepository(AccountRow).update({ id: person.id }, { ...given(), passwordByOfficer: true });
        await this.sessions.end(manager, person.id);
      }
      const handed = given ? ` ${me.name} gives the password for one sign-in.` : '';
      const sentence = `${person.name} is deputy of ${officer.name} from ${read.from} to ${read.until} for ${part.words}${isOwn ? '' : ', once another safety officer has signed'}: ${read.reason}.${handed}`;
      await recordEvents(manager, me, at, [{ what: 'person', sentence, ...(read.tourId === null ? {} : { tourId: read.tourId }) }]);
      return { ok: true, value: undefined };
    });
    return id;
  }

  /** By the officer in whose place it is, or by a third one: never by who named. */
  async sign(id: string, me: SignedIn): Promise<void> {
    await this.decide(id, me, (row, person, officer) => {
      if (row.signedAt !== null) throw new NotAllowedError('This deputy is signed for already.');
      if (row.namedById === me.id)
        throw new NotAllowedError('Who names a deputy of another officer does not sign: that officer does, or a third.');
      return { set: { signedById: me.id, signedAt: this.clock.now() }, sentence: `Signed: ${person} is deputy of ${officer}.` };
    });
  }

  async withdraw(id: string, me: SignedIn): Promise<void> {
    await this.decide(id, me, (row, person, officer) => {
      if (me.role !== 'safety' && row.accountId !== me.id)
        throw new NotAllowedError('This is for a safety officer, or for the deputy: they alone end it.');
      return {
        set: { withdrawnById: me.id, withdrawnAt: this.clock.now() },
        sentence: `${person} is no longer deputy of ${officer}, from now on.`,
      };
    });
  }

  private async decide(
    id: string,
    me: SignedIn,
    act: (row: DeputyRow, person: string, officer: string) => { readonly set: Partial<DeputyRow>; readonly sentence: string },
  ): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const rows = manager.getRepository(DeputyRow);
      const row = await rows.findOneBy({ id });
      if (!row) throw new NotFoundError('This deputy');
      if (row.withdrawnAt !== null) throw new NotAllowedError('This was withdrawn already. Name a deputy anew.');
      const people: Pick<OnFile, 'id' | 'name'>[] = await manager.query('SELECT id, name FROM account WHERE id = ANY($1)', [
        [row.accountId, row.officerId],
      ]);
      const nameOf = (one: string) => people.find((each) => each.id === one)?.name ?? 'somebody';
      const { set, sentence } = act(row, nameOf(row.accountId), nameOf(row.officerId));
      await rows.update({ id }, set);
      await recordEvents(manager, me, this.clock.now(), [{ what: 'person', sentence }]);
      return { ok: true, value: undefined };
    });
  }

  private dayFaults({ from, until, timeZone }: Read): BadInput[] {
    const isZone = isTimeZone(timeZone);
    return [
      ...(isZone
        ? []
        : [{ field: 'timeZone', value: timeZone.slice(0, 40), wanted: 'a zone of the time zone database, such as Europe/London' }]),
      ...(isPlainDate(from) ? [] : [{ field: 'from', value: from.slice(0, 40), wanted: 'a day, YYYY-MM-DD' }]),
      ...(!isPlainDate(until) || (isPlainDate(from) && (until < from || daysBetween(from, until) >= longestDays))
        ? [
            {
              field: 'until',
              value: until.slice(0, 40),
              wanted: `a day, YYYY-MM-DD, on or after the first and at most ${longestDays} days with it`,
            },
          ]
        : isZone && until < dayIn(this.clock, timeZone)
          ? [{ field: 'until', value: until, wanted: 'today or a day to come' }]
          : []),
    ];
  }

  private async partOf(manager: EntityManager, { depot, tourId }: Read): Promise<{ readonly words: string; readonly faults: BadInput[] }> {
    if (depot !== null && tourId !== null)
      return {
        words: '',
        faults: [{ field: 'depot', value: depot, wanted: 'a depot or a tour, not both; name twice where both are meant' }],
      };
    if (tourId !== null) {
      const [tour]: { name: string }[] = await manager.query('SELECT name FROM tour WHERE id = $1 AND removed_at IS NULL', [tourId]);
      return tour
        ? { words: tour.name, faults: [] }
        : { words: '', faults: [{ field: 'tourId', value: tourId.slice(0, 40), wanted: 'a tour on the list' }] };
    }
    if (depot === null) return { words: 'the whole company', faults: [] };
    const depots: { depot: string }[] = await manager.query('SELECT DISTINCT depot FROM item ORDER BY depot LIMIT 100');
    return depots.some((each) => each.depot === depot)
      ? { words: depot, faults: [] }
      : {
          words: '',
          faults: [
            {
              field: 'depot',
              value: depot.slice(0, 40),
              wanted: `a depot of the register: ${depots.map((each) => each.depot).join(', ')}`,
            },
          ],
        };
  }
}

type Read = DeputyInput;

/** The same person for the same officer, part and days: it is on file already. */
async function mustBeNew(manager: EntityManager, { personId, officerId, from, until, depot, tourId }: Read): Promise<void> {
  const same: unknown[] = await manager.query(
    `SELECT FROM deputy WHERE account_id = $1 AND officer_id = $2 AND from_day = $3::date AND until_day = $4::date AND depot IS NOT DISTINCT FROM $5
       AND tour_id IS NOT DISTINCT FROM $6 AND withdrawn_at IS NULL LIMIT 1`,
    [personId, officerId, from, until, depot, tourId],
  );
  if (same.length > 0)
    throw new BadInputError([{ field: 'from', value: from, wanted: 'other days, or another part: so this deputy is named already' }]);
}

const readInput = (input: DeputyInput): Read => ({
  ...input,
  timeZone: zoneOf(input.timeZone),
  depot: input.depot?.trim() ? input.depot.trim() : null,
  tourId: input.tourId ?? null,
  password: input.password ?? null,
  reason: input.reason.trim().replace(/\.$/, ''),
});

function peopleFaults({ personId, officerId, password }: Read, person: OnFile | undefined, officer: OnFile | undefined): BadInput[] {
  return [
    ...(officer ? [] : [{ field: 'officerId', value: officerId.slice(0, 40), wanted: 'a safety officer on file' }]),
    ...(person && person.role !== 'safety'
      ? []
      : [
          {
            field: 'personId',
            value: (person?.name ?? personId).slice(0, 80),
            wanted: 'somebody on file who may sign in and is no safety officer',
          },
        ]),
    ...(person && !person.isOwnHand && person.role !== 'safety' && password === null
      ? [
          {
            field: 'password',
            value: '(not shown)',
            wanted: `a password for one sign-in of ${person.name} from you: what they have now goes back to one that somebody else gave`,
          },
        ]
      : []),
  ];
}

const reasonFaults = (reason: string): BadInput[] =>
  reason === '' || reason.length > 300 ? [{ field: 'reason', value: reason.slice(0, 80), wanted: 'why, in 1 to 300 characters' }] : [];

/** A zone as both the house and its database call it; what is none stays as it was given. */
function zoneOf(given: string): string {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: given }).resolvedOptions().timeZone;
  } catch {
    return given;
  }
}

const isTimeZone = (zone: string): boolean => zone === 'UTC' || Intl.supportedValuesOf('timeZone').includes(zone);
