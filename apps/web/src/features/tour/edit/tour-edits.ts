import type { Tour } from '#tour-file';
import { Refused } from '../../../platform/refused.js';
import { type ReadTour, type TourStore, isOlder } from './save-over.js';

/** One small change of a tour; made twice it comes to the same. */
export type TourEdit = (tour: Tour) => Tour;

const firstPauseMs = 250;
const longestPauseMs = 8_000;

/**
 * Small changes in quick succession: each is seen at once, they are saved one batch after the other on top of what is on file by then. None is lost because
 * somebody else (or the one before it) was quicker, nor because answers do not come: it is tried until the house has it. What the house refuses is told, alone.
 */
export class TourEdits {
  private readonly queue: TourEdit[] = [];
  private isGoing = false;

  constructor(
    private readonly store: TourStore,
    private onFile: ReadTour,
    private readonly pause: (milliseconds: number) => Promise<void>,
    private readonly told: (now: { readonly waiting: readonly TourEdit[]; readonly saved?: ReadTour; readonly refused?: unknown }) => void,
  ) {}

  /** Of somebody else, or of another screen. */
  heard(now: ReadTour): void {
    if (now.version > this.onFile.version) this.onFile = now;
  }

  /** Fulfilled once everything that was asked for by then is saved or refused. */
  async add(edit: TourEdit): Promise<void> {
    this.queue.push(edit);
    this.told({ waiting: [...this.queue] });
    if (this.isGoing) return;
    this.isGoing = true;
    try {
      while (this.queue.length > 0) await this.bring([...this.queue]);
    } finally {
      this.isGoing = false;
    }
  }

  private async bring(batch: readonly TourEdit[]): Promise<void> {
    const refused = await this.save(batch);
    if (refused !== undefined && batch.length > 1) return this.bring(batch.slice(0, 1));
    this.queue.splice(0, batch.length);
    this.told({ waiting: [...this.queue], ...(refused === undefined ? { saved: this.onFile } : { refused }) });
    return undefined;
  }

  /** The refusal, if it is one. */
  private async save(batch: readonly TourEdit[]): Promise<unknown> {
    for (let failures = 0; ; ) {
      try {
        this.onFile = await this.store.save(
          batch.reduce((so, edit) => edit(so), this.onFile.tour),
          this.onFile.version,
        );
        return undefined;
      } catch (fault) {
        if (!isOlder(fault) && !isLost(fault)) return fault;
        if (isLost(fault)) await this.pause(Math.min(longestPauseMs, firstPauseMs * 2 ** failures++));
        // Older, or nobody knows whether it was saved: on top of what is on file now it is made again.
        this.onFile = await this.store.read(this.onFile.tour.id).catch(() => this.onFile);
      }
    }
  }
}

const isLost = (fault: unknown): boolean => fault instanceof Refused && fault.kind === 'network';
