import { Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Deputyship } from './deputyship.js';
import type { SignedIn } from './person.js';

/** What an act of the safety officer is about, for who is deputy of a part of the house alone; neither: the house as a whole. */
export interface About {
  readonly item?: string | undefined;
  readonly tour?: string | undefined;
}

/** Who acts as deputy: with the officer's permissions, the own id, and a name that says so wherever it is written. */
export const asDeputy = (me: SignedIn, deputyship: Deputyship): SignedIn => ({
  ...me,
  name: `${me.name}, deputy of ${deputyship.officer}`,
  role: 'safety',
  deputyships: [],
  deputyOf: deputyship.officerId,
});

/** A name as it is on file, without what it stood in for. */
export const ownName = (name: string): string => name.replace(/, deputy of .*$/u, '');

/** Whether what is done falls into what a deputy is deputy of. */
@Injectable()
export class DeputyScopes {
  constructor(private readonly dataSource: DataSource) {}

  /** The one who asks as the safety officer's deputy for this; undefined where there is no such deputyship today. */
  async acting(me: SignedIn, about: About, manager: EntityManager = this.dataSource.manager): Promise<SignedIn | undefined> {
    for (const each of me.deputyships) if (await covers(manager, each, about)) return asDeputy(me, each);
    return undefined;
  }
}

/** An item belongs to its depot, and to tours that it is promised to; a tour to the depot that it leaves from. */
export async function covers(manager: EntityManager, { depot, tourId }: Deputyship, { item, tour }: About): Promise<boolean> {
  if (depot === null && tourId === null) return true;
  if (tour !== undefined && tourId !== null) return tour === tourId;
  const [asked, given] =
    tour !== undefined
      ? [`SELECT FROM tour WHERE id = $1 AND data->>'depot' = $2`, [tour, depot]]
      : tourId === null
        ? ['SELECT FROM item WHERE id = $1 AND depot = $2', [item ?? null, depot]]
        : [`SELECT FROM booking WHERE item_id = $1 AND holder_kind = 'tour' AND holder_id = $2`, [item ?? null, tourId]];
  return (await manager.query<unknown[]>(`${asked} LIMIT 1`, given)).length > 0;
}
