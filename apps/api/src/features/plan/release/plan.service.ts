import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { BadInput, Result } from '#kernel';
import {
  type ReleaseDecision,
  type TickKey,
  againstTick,
  againstTickDown,
  changedInputs,
  checkCart,
  decideRelease,
  rowWays,
  tickKeyOf,
  tickText,
  tickWords,
} from '#pack-plan';
import type { TickRefusal } from '#trade';
import { type Words, tell } from '#words';
import { WORDS } from '../../../platform/config/words.js';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { databaseErrorOf } from '../../../platform/faults/database-error.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotAllowedError, NotFoundError } from '../../../platform/faults/fault.js';
import { DeputyScopes } from '../../../platform/sign-in/deputy.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { TourFileReader } from '../../../planning/snapshot/tour-file.reader.js';
import { type Outside, countersignRelease } from '../../rigging/sign-off.writer.js';
import { byOnePerson, judgesAlone } from '../../one-person/one-person.reader.js';
import { dayOfShow } from '../../venue/show-day.reader.js';
import { dropExpiredHolds, replaceBookings, usesTogether } from '../bookings/booking.repository.js';
import { barredStepsOf } from '../stored/barred-act.reader.js';
import { keepBarredAct } from '../stored/barred-act.writer.js';
import { barredView } from '../stored/barred-view.js';
import { changeViews } from '../stored/change-views.js';
import type { BarredView, BookingClash, BookingRefusal, CartCheckResult, StaleRefusal, StopRefusal } from '../plan.types.js';
import { CartCheckRow, PackPlanRow } from '../stored/rows.js';
import { type Tickable, getTickable } from '../page/tickable.query.js';
import { type BarredInPlan, BarredReader } from '../stored/barred.reader.js';
import { showMustExist } from '../stored/show-must-exist.js';
import { putTick, takeTickBack, ticksOf } from '../stored/tick.repository.js';

const mostRemark = 300;
const unknownStep = { code: 'unknown-step' } as const;

type ReleaseRefusal = BookingRefusal | StaleRefusal | StopRefusal;
type Released = Result<string, ReleaseRefusal>;

/** Drafts, releases and what is confirmed on the floor. */
@Injectable()
export class PlanService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly reader: TourFileReader,
    private readonly gate: BarredReader,
    private readonly deputies: DeputyScopes,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  /** Draft to next revision: its predecessor is superseded and the tour's promises replaced in the same transaction. */
  async release(planId: string, despite: string | null, second: Outside | null, who: SignedIn): Promise<Released> {
    try {
      return await this.unitOfWork.run<string, ReleaseRefusal>((manager) => this.releaseIn(manager, planId, despite, second, who));
    } catch (fault) {
      // The other one was quicker between our look and our end: the constraint says so, and we look again who it was.
      if (databaseErrorOf(fault)?.constraint !== 'booking_no_overlap') throw fault;
      return this.unitOfWork.run<string, ReleaseRefusal>((manager) => this.releaseIn(manager, planId, despite, second, who));
    }
  }

  private async releaseIn(
    manager: EntityManager,
    planId: string,
    despite: string | null,
    second: Outside | null,
    me: SignedIn,
  ): Promise<Released> {
    await dropExpiredHolds(manager, this.clock.now());
    const rows = manager.getRepository(PackPlanRow);
    const draft = await rows.findOneBy({ id: planId });
    if (!draft) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
    if (draft.state !== 'draft') throw new NotAllowedError(whyNoDraft(draft));
    await showMustExist(manager, draft.tourId, draft.showId);
    const file = await this.reader.load(manager, draft.tourId);
    const { id: tourId, prepFrom, returnTo, name } = file.tour;
    const others = await rows.find({ where: { tourId: draft.tourId, state: 'released' } });
    const uses = usesTogether([draft.plan.uses, ...others.filter((each) => each.showId !== draft.showId).map((each) => each.plan.uses)]);
    const clashes = await replaceBookings(manager, { id: tourId, name }, prepFrom, returnTo, uses);
    const why = despite?.trim() ?? '';
    const changes = changedInputs(draft.plan, file);
    const decideAs = (isOfficer: boolean) => decideRelease(draft.plan, changes, clashes[0], why, isOfficer);
    const own = decideAs(me.role === 'safety');
    const mayAlone = me.role !== 'warehouse';
    const deputy = needsOfficerNow(own) || !mayAlone ? await this.deputies.acting(me, { tour: tourId }, manager) : undefined;
    if (deputy && draft.madeById === me.id && !second) throw new NotAllowedError(whyNotOwnPlan);
    if (!deputy && !mayAlone)
      throw new NotAllowedError('You are not deputy for this tour: the system tech or the safety officer releases its plans.');
    const [who, decision] = deputy ? [deputy, decideAs(true)] : [me, own];
    if (!decision.releases) return { ok: false, error: this.refusalOf(decision, clashes) };
    const before = await rows.find({ where: { tourId: draft.tourId, showId: draft.showId } });
    const released = before.filter((each) => each.state !== 'draft').length;
    await rows.update({ tourId: draft.tourId, showId: draft.showId, state: 'released' }, { state: 'superseded' });
    const revision = revisionLetter(released);
    await rows.update(
      { id: planId },
      {
        state: 'released',
        revision,
        releasedAt: this.clock.now(),
        releasedBy: who.name,
        releasedById: who.id,
        releasedDespite: decision.saysStop ? why : null,
      },
    );
    await this.afterRelease(
      manager,
      draft,
      { revision, despite: decision.saysStop ? why : null, prepFrom, returnTo, tour: name },
      second,
      who,
    );
    return { ok: true, value: planId };
  }

  /** Who countersigned, and the words of the log. */
  private async afterRelease(
    manager: EntityManager,
    draft: PackPlanRow,
    {
      revision,
      despite,
      prepFrom,
      returnTo,
      tour,
    }: { revision: string; despite: string | null; prepFrom: string; returnTo: string; tour: string },
    second: Outside | null,
    who: SignedIn,
  ): Promise<void> {
    const at = this.clock.now();
    const seconded = second ? await countersignRelease(manager, draft.id, second, at, who) : '';
    const isByOne = !second && draft.madeById === who.id && (await judgesAlone(manager, who));
    const although = despite === null ? '' : `, although it says stop: ${despite}`;
    const sentence = `Released revision ${revision} of ${draft.plan.show.name}${although}.${seconded}${isByOne ? byOnePerson : ''}`;
    await recordEvents(manager, who, at, [
      { what: 'released', tourId: draft.tourId, sentence },
      ...draft.plan.uses.map(({ item }) => ({
        what: 'booked',
        itemId: item,
        tourId: draft.tourId,
        sentence: `Promised to ${tour} from ${prepFrom} to ${returnTo}: ${sentence}`,
      })),
    ]);
  }

  private refusalOf(decision: ReleaseDecision & { readonly releases: false }, clashes: readonly BookingClash[]): ReleaseRefusal {
    const { code } = decision.refusal;
    const said = { code, sentence: tell(this.words.refusals, decision.refusal) };
    if ('stops' in decision) return { ...said, needsOfficer: code === 'release-needs-officer', stops: [...decision.stops] };
    if ('changed' in decision) return { ...said, changed: changeViews(decision.changed, this.words) };
    return { ...said, clashes: [...clashes] };
  }

  async confirmCart(planId: string, loadId: string, serials: readonly string[], who: SignedIn): Promise<CartCheckResult> {
    const outcome = await this.unitOfWork.run<CartCheckResult>(async (manager) => {
      const row = await this.planRow(manager, planId);
      refuseSuperseded(row);
      const load = row.plan.carts.loads.find((each) => each.id === loadId);
      if (!load)
        throw new BadInputError([
          { field: 'load', value: loadId, wanted: `a cart load of this plan: ${row.plan.carts.loads.map((each) => each.id).join(', ')}` },
        ]);
      if (serials.length > 40)
        throw new BadInputError([{ field: 'serials', value: `a list of ${serials.length}`, wanted: 'at most 40 serials' }]);
      const barred = (await this.gate.of(manager, planId)).filter((each) => each.loads.includes(loadId));
      const against = new Map(barred.map((each) => [each.item, each.reason]));
      const slots = checkCart(row.plan, load, serials, this.words, against);
      const agrees = slots.every((each) => each.agrees) && barred.length === 0;
      if (agrees)
        await manager
          .getRepository(CartCheckRow)
          .save({ planId, load: loadId, checkedAt: this.clock.now(), checkedBy: who.name, checkedById: who.id });
      const sentence = agrees
        ? `Confirmed ${load.cart} as ${loadId}.`
        : `Read ${load.cart} for ${loadId}: ${[...slots.filter((each) => !each.agrees), ...this.told(barred)].map((each) => each.sentence).join(' ')}`;
      await recordEvents(manager, who, this.clock.now(), [
        { what: agrees ? 'confirmed' : 'read wrong', tourId: row.tourId, sentence, ...(load.cart === null ? {} : { itemId: load.cart }) },
      ]);
      if (barred.length > 0 && slots.every((each) => each.agrees || each.fact.code === 'barred')) {
        const done = { what: loadId, words: `${load.cart ?? 'a cart'} confirmed as ${loadId}`, hang: null };
        const { tourId, showId } = row;
        await keepBarredAct(
          manager,
          { tourId, showId, planId, show: row.plan.show.name, ...done },
          barred,
          this.clock.now(),
          who,
          this.words,
        );
      }
      return { ok: true, value: { agrees, slots: slots.map((each) => ({ ...each, code: each.fact.code })), barred: this.told(barred) } };
    });
    if (!outcome.ok) throw new Error('a reading is never refused');
    return outcome.value;
  }

  /** What is refused because it is barred, and was done on a device before the house could say so, is kept as that. */
  async tick(planId: string, what: string, done: boolean, remark: string | null, who: SignedIn): Promise<void> {
    const outcome = await this.unitOfWork.run<BadInput | null>(async (manager) => {
      const said = remark?.trim() ?? '';
      if (said.length > mostRemark)
        throw new BadInputError([{ field: 'remark', value: said.slice(0, 80), wanted: `up to ${mostRemark} characters` }]);
      const row = await getTickable(manager, planId);
      refuseSuperseded(row);
      const key = tickKeyOf(row.plan, what);
      const barred = key && done ? concerned(await this.gate.of(manager, planId), key) : [];
      const against = key ? await this.againstTick(manager, row, key, done, barred) : unknownStep;
      if (!key || against !== null) {
        const wanted = tell(this.words.tickRefusals, against ?? unknownStep);
        const fault = { field: 'what', value: what.slice(0, 80), wanted };
        if (!key || against?.code !== 'barred' || !(await this.keepDone(manager, row, key, barred, who))) throw new BadInputError([fault]);
        return { ok: true, value: fault };
      }
      if (done) await putTick(manager, planId, key, { at: this.clock.now(), who, remark: said || null });
      else await takeTickBack(manager, planId, key);
      await recordEvents(manager, who, this.clock.now(), [
        {
          what: done ? 'ticked' : 'unticked',
          tourId: row.tourId,
          sentence: `${done ? 'Ticked' : 'Took back'} ${tickWords(key)} of ${row.plan.show.name}${said && `, ${said}`}.${this.broughtDown(barred)}`,
        },
      ]);
      return { ok: true, value: null };
    });
    if (outcome.ok && outcome.value !== null) throw new BadInputError([outcome.value]);
  }

  private keepDone(manager: EntityManager, { id, tourId, plan }: Tickable, key: TickKey, barred: readonly BarredInPlan[], who: SignedIn) {
    const hang = key.kind === 'step-up' ? key.subject : null;
    const done = { what: tickText(key), words: tickWords(key), hang };
    const of = { tourId, showId: plan.show.id, planId: id, show: plan.show.name, ...done };
    return keepBarredAct(manager, of, barred, this.clock.now(), who, this.words);
  }

  /** What speaks against ticking this, or taking it back; null where nothing does. */
  private async againstTick(
    manager: EntityManager,
    { id, plan, state, tourId }: Tickable,
    key: TickKey,
    done: boolean,
    barred: readonly BarredInPlan[],
  ): Promise<TickRefusal | null> {
    // Home, down and off the hoists it goes with whatever is wrong with it.
    const isOnTheWay =
      key.kind === 'step-up' || (key.kind === 'row' && (await dayOfShow(manager, this.clock, tourId, plan.show.id)) <= plan.show.from);
    if (isOnTheWay && barred.length > 0) return { code: 'barred', items: barred.map(({ item, reason }) => ({ item, why: reason })) };
    if (isRow(key)) return null;
    const hang = plan.picks.hangs.find((each) => each.hang === key.subject);
    if (key.kind === 'move' || !hang) return unknownStep;
    if (state !== 'released') return { code: 'not-released', show: plan.show.name };
    const { approved, manual } = hang.runningOrder;
    if (approved === null) return { code: 'system-not-approved', system: manual ?? 'of this hang' };
    const ticked = new Set(await ticksOf(manager, id));
    if (key.kind === 'step-up') return againstTick(hang.runningOrder.goingUp, ticked, tickText(key), done);
    const passed = new Set([...ticked, ...(await barredStepsOf(manager, id))]);
    return againstTickDown(hang.runningOrder, { ticked, passed, isBarred: barred.length > 0 }, tickText(key), done);
  }

  private told(barred: readonly BarredInPlan[]): BarredView[] {
    return barred.map((each) => barredView(each, this.words));
  }

  private broughtDown(barred: readonly BarredInPlan[]): string {
    const said = barred.map(({ item, reason }) => {
      const why = tell(this.words.against, reason);
      return reason.code === 'not-judged' ? why : `${item} (${why})`;
    });
    return said.length === 0 ? '' : ` With ${[...new Set(said)].join(', ')}.`;
  }

  private async planRow(manager: EntityManager, planId: string): Promise<PackPlanRow> {
    const row = await manager.getRepository(PackPlanRow).findOneBy({ id: planId });
    if (!row) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
    return row;
  }
}

/** What was done is done by the revision in force; the record of an earlier one stays as it was when it was superseded. */
function refuseSuperseded({ id, state }: { readonly id: string; readonly state: PackPlanRow['state'] }): void {
  if (state === 'superseded')
    throw new BadInputError([
      { field: 'planId', value: id, wanted: 'the plan in force; this revision has been superseded, open the show again' },
    ]);
}

/** What must not fly of a hang, or of a row of a truck. */
const concerned = (barred: readonly BarredInPlan[], { kind, subject, place }: TickKey): readonly BarredInPlan[] =>
  barred.filter((each) =>
    kind === 'row'
      ? each.rows.some(({ truck, row }) => truck === subject && row === place)
      : (kind === 'step-up' || kind === 'step-down') && each.hangs.includes(subject),
  );

const isRow = ({ kind }: TickKey): boolean => rowWays.some((each) => each === kind);

const needsOfficerNow = (decision: ReleaseDecision): boolean => !decision.releases && decision.refusal.code === 'release-needs-officer';

const whyNotOwnPlan =
  'You made this plan: nobody signs twice in two roles. The safety officer, or another deputy, releases it over its stops; or somebody from outside countersigns, such as the rigger of the venue.';

/** 0 is A, 25 is Z, 26 is AA. */
function revisionLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : revisionLetter(Math.floor(index / 26) - 1) + letter;
}

/** Why a plan is not released a second time. */
const whyNoDraft = ({ state, revision, releasedBy }: PackPlanRow): string =>
  state === 'released'
    ? `${releasedBy ?? 'Somebody'} has just released this plan as revision ${revision}: nothing is left to do. Open the show again.`
    : 'A newer revision has taken the place of this one. Open the show again.';
