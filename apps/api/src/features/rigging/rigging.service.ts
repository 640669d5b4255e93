import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { unseenIn, wantedSeen } from '#kernel';
import { type HangResult, type PackPlan, judgeReading } from '#pack-plan';
import { type Words, tell } from '#words';
import { WORDS } from '../../platform/config/words.js';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { byOnePerson, judgesAlone } from '../one-person/one-person.reader.js';
import { BarredReader } from '../plan/stored/barred.reader.js';
import { PlanReader } from '../plan/stored/plan.reader.js';
import type { OutsideInput, RiggingRecord } from './rigging.types.js';
import { LoadReadingRow, SignOffRow } from './rows.js';
import { isAlike, keepSignOff, mustBeFresh, outsideOf, outsideWords } from './sign-off.writer.js';

function mustBeAName(signed: string): void {
  if (signed === '' || signed.length > 80)
    throw wrong('name', signed.slice(0, 80), 'the name of the person who signs, up to 80 characters');
  const unseen = unseenIn(signed);
  if (unseen !== undefined) throw wrong('name', signed, wantedSeen(unseen));
}

const wrong = (field: string, value: unknown, wanted: string) => new BadInputError([{ field, value, wanted }]);

/** Readings and signatures on what hangs. What hangs is a released revision; a draft takes neither. */
@Injectable()
export class RiggingService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly plans: PlanReader,
    private readonly gate: BarredReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async record(planId: string): Promise<RiggingRecord> {
    return this.recordIn(this.dataSource.manager, planId, (await this.plans.one(this.dataSource.manager, planId)).plan);
  }

  async addReading(planId: string, hangId: string, hole: string, place: string, readingKg: number, who: SignedIn): Promise<RiggingRecord> {
    if (place !== 'at the hook' && place !== 'above the hoist')
      throw wrong('place', place.slice(0, 40), '"at the hook" or "above the hoist"');
    if (!(readingKg >= 0 && readingKg <= 100_000)) throw wrong('readingKg', readingKg, 'kilograms from 0 to 100,000');
    return this.write(async (manager) => {
      const plan = await this.released(manager, planId);
      const hang = hangOf(plan, hangId);
      const holes = hang.unshared ? hang.unshared.hoists.map((each) => each.hole) : hang.picks.map((each) => each.hole);
      if (!holes.includes(hole)) throw wrong('hole', hole.slice(0, 40), `a pick of ${hangId}: ${holes.join(', ')}`);
      const at = this.clock.now();
      await manager
        .getRepository(LoadReadingRow)
        .insert({ id: randomUUID(), planId, hang: hangId, hole, place, readingKg, readAt: at, readBy: who.name, readById: who.id });
      const { sentence } = judgeReading(hang, hole, place, readingKg, plan.picks.loadRule, this.words);
      await recordEvents(manager, who, at, [
        { what: 'measured', tourId: plan.tour.id, sentence: `${plan.show.name}, ${hangId}: ${sentence}` },
      ]);
      return this.recordIn(manager, planId, plan);
    });
  }

  /**
   * Refused while a hold of the way up is open, while the rigging system waits for its approval, and for a handover or a countersignature before the
   * inspection. Who inspects is on file; who takes over may come from outside, such as the venue's rigger, and is another person, as is who countersigns:
   * nobody signs twice in two roles.
   */
  async signOff(given: SignOff, who: SignedIn): Promise<RiggingRecord> {
    const { planId, hang: hangId, kind } = given;
    if (kind !== 'inspected' && kind !== 'handed over' && kind !== 'inspection countersigned')
      throw wrong('kind', kind.slice(0, 40), '"inspected", "handed over" or "inspection countersigned"');
    const [signed, said] = [given.name.trim(), given.remark.trim()];
    mustBeAName(signed);
    if (said.length > 400) throw wrong('remark', `${said.slice(0, 40)} ...`, 'up to 400 characters');
    return this.write(async (manager) => {
      const plan = await this.released(manager, planId);
      const { runningOrder } = hangOf(plan, hangId);
      await this.mayFly(manager, planId, hangId, runningOrder.approved !== null);
      const ticked = new Set(await this.plans.ticks(manager, planId));
      const open = runningOrder.goingUp.filter((each) => each.hold && !ticked.has(each.key));
      if (open.length > 0)
        throw wrong(
          'kind',
          kind,
          `every hold of going up ticked first; ${open.length} ${open.length === 1 ? 'is' : 'are'} open, the next: ${open[0]?.text}`,
        );
      await this.readingsAllow(manager, plan, given);
      const before = await manager.getRepository(SignOffRow).findBy({ planId, hang: hangId });
      mayFollow(kind, signed, before);
      const signer = await signerOf(manager, kind, { ...given, name: signed }, before, who);
      const isByOne = signer.outside === null && before.some((each) => each.kind !== kind && isAlike(each.name, signer.name));
      if (isByOne && said === '') throw wrong('remark', said, 'why one person alone inspects and takes over');
      const at = this.clock.now();
      const { name, outside } = signer;
      await keepSignOff(manager, { planId, hang: hangId, kind, name, remark: said }, outside, at, who);
      const words = outside ? outsideWords({ name, ...outside }) : name;
      const sentence = `${signWords[kind]} of ${hangId}, ${plan.show.name}, signed by ${words}${said ? `: ${said}` : ''}.${isByOne ? byOnePerson : ''}`;
      await recordEvents(manager, who, at, [{ what: kind, tourId: plan.tour.id, sentence }]);
      return this.recordIn(manager, planId, plan);
    });
  }

  /** A load cell that says stop stands until somebody says why. */
  private async readingsAllow(manager: EntityManager, plan: PackPlan, { planId, hang, remark }: SignOff): Promise<void> {
    const { readings } = await this.recordIn(manager, planId, plan);
    const latest = new Map(readings.filter((each) => each.hang === hang).map((each) => [`${each.hole} ${each.place}`, each]));
    const standing = [...latest.values()].find((each) => each.verdict === 'differs');
    if (standing && remark.trim() === '')
      throw wrong('remark', remark, `why it is signed although a load cell says stop: ${standing.sentence}`);
  }

  private async mayFly(manager: EntityManager, planId: string, hangId: string, isApproved: boolean): Promise<void> {
    if (!isApproved)
      throw wrong('hang', hangId, 'a hang whose rigging system the safety officer has approved; this one is an example, not for use');
    const barred = (await this.gate.of(manager, planId)).filter((each) => each.hangs.includes(hangId));
    if (barred.length > 0)
      throw wrong(
        'hang',
        hangId,
        `a hang with ${tell(this.words.tickRefusals, { code: 'barred', items: barred.map(({ item, reason }) => ({ item, why: reason })) })}`,
      );
  }

  private async write(work: (manager: EntityManager) => Promise<RiggingRecord>): Promise<RiggingRecord> {
    const outcome = await this.unitOfWork.run<RiggingRecord>(async (manager) => ({ ok: true, value: await work(manager) }));
    if (!outcome.ok) throw new Error('a record is never refused');
    return outcome.value;
  }

  private async released(manager: EntityManager, planId: string): Promise<PackPlan> {
    const { state, plan } = await this.plans.one(manager, planId);
    if (state !== 'released')
      throw wrong(
        'planId',
        planId,
        `the released revision of ${plan.show.name}: what hangs is what was released, and this plan is ${state === 'draft' ? 'a draft' : 'superseded'}`,
      );
    return plan;
  }

  private async recordIn(manager: EntityManager, planId: string, plan: PackPlan): Promise<RiggingRecord> {
    const readings = await manager.getRepository(LoadReadingRow).find({ where: { planId }, order: { readAt: 'ASC' } });
    const signOffs = await manager.getRepository(SignOffRow).find({ where: { planId }, order: { signedAt: 'ASC' } });
    return {
      readings: readings.map((each) => {
        const hang = hangOf(plan, each.hang);
        const { verdict, sentence } = judgeReading(hang, each.hole, each.place, each.readingKg, plan.picks.loadRule, this.words);
        return { ...each, readAt: each.readAt.toISOString(), verdict, sentence };
      }),
      signOffs: signOffs.map((each) => ({ ...each, signedAt: each.signedAt.toISOString() })),
    };
  }
}

interface SignOff {
  readonly planId: string;
  readonly hang: string;
  readonly kind: string;
  readonly name: string;
  readonly remark: string;
  readonly outside: OutsideInput | null;
}

const signWords = {
  inspected: 'Inspection after assembly',
  'handed over': 'Handover',
  'inspection countersigned': 'Inspection after assembly, countersigned,',
} as const;

/** Each is signed once, the inspection first; countersigned by as many as are there, each once. */
function mayFollow(kind: keyof typeof signWords, name: string, before: readonly SignOffRow[]): void {
  const same = before.find((each) => each.kind === kind && (kind !== 'inspection countersigned' || isAlike(each.name, name)));
  if (same)
    throw wrong(
      'kind',
      kind,
      `what is not signed yet; ${same.name} signed it on ${same.signedAt.toISOString().slice(0, 16).replace('T', ' ')} UTC`,
    );
  if (kind !== 'inspected' && !before.some((each) => each.kind === 'inspected'))
    throw wrong('kind', kind, 'the inspection after assembly signed first');
}

interface Signer {
  readonly name: string;
  readonly outside: OutsideInput | null;
}

/** The name under a signature: as it is on file for who inspects, as it was written for who comes from outside. */
async function signerOf(
  manager: EntityManager,
  kind: keyof typeof signWords,
  { planId, name, outside }: SignOff,
  before: readonly SignOffRow[],
  who: SignedIn,
): Promise<Signer> {
  const people: { name: string }[] = await manager.query(
    `SELECT name FROM account WHERE left_number IS NULL AND disabled_at IS NULL ORDER BY name`,
  );
  const person = people.find((each) => isAlike(each.name, name));
  if (kind === 'inspected') {
    if (person) return { name: person.name, outside: null };
    throw wrong('name', name, `a person on file, by name: ${people.map((each) => each.name).join(', ')}`);
  }
  const inspector = before.find((each) => each.kind === 'inspected' && isAlike(each.name, name));
  if (inspector && kind === 'handed over' && isAlike(who.name, name) && (await judgesAlone(manager, who)))
    return { name: who.name, outside: null };
  if (inspector)
    throw wrong('name', name, `another person than ${inspector.name}, who signed the inspection: the venue's rigger, for example, by name`);
  if (person && kind === 'handed over' && !outside) return { name: person.name, outside: null };
  if (!outside) throw wrong('outside', null, `of ${name}, who is not on file in this house: company, role, and where they stood`);
  const { name: written, ...from } = await outsideOf(manager, { ...outside, name });
  await mustBeFresh(manager, planId, kind, written);
  return { name: written, outside: from };
}

function hangOf(plan: PackPlan, id: string): HangResult {
  const hang = plan.picks.hangs.find((each) => each.hang === id);
  if (!hang) throw wrong('hang', id.slice(0, 80), `a hang of this plan: ${plan.picks.hangs.map((each) => each.hang).join(', ')}`);
  return hang;
}
