import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type CountRecord, evidenceSince } from '#hardware-count';
import type { SpareSetting } from '#tour-file';
import { HardwareCountRow } from './rows.js';

/** What counts at return taught the house. */
@Injectable()
export class CountReader {
  /**
   * Settings with the counts of this house added to what they say was counted. `through` of a setting marks the counts that its sum holds already, so a
   * tour that was exported with them and comes back counts nothing twice. A filed loss per use is not learned.
   */
  async learned(manager: EntityManager, settings: readonly SpareSetting[]): Promise<SpareSetting[]> {
    const rows = settings.length === 0 ? [] : await manager.getRepository(HardwareCountRow).find({ order: { id: 'ASC' } });
    return settings.map((setting) =>
      withCounts(
        setting,
        rows.filter((row) => row.key === setting.item).map((row) => recordOf(row)),
      ),
    );
  }
}

function withCounts(setting: SpareSetting, records: readonly CountRecord[]): SpareSetting {
  const last = records.at(-1);
  if (!setting.prior || !last) return setting;
  const { losses = 0, uses = 0, through = null } = setting.counted ?? {};
  if (through !== null && last.at <= through) return setting;
  const since = evidenceSince(records, through);
  return {
    ...setting,
    counted: { losses: Math.max(0, losses + since.losses), uses: Math.max(0, uses + since.uses), through: last.at },
  };
}

const recordOf = ({ id, corrects, countedAt, sent, returned, damaged, uses }: HardwareCountRow): CountRecord => ({
  id,
  corrects,
  at: countedAt.toISOString(),
  sent,
  returned,
  damaged,
  uses,
});
