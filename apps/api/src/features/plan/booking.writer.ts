import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { Booking } from '#tour-file';
import { BookingRow } from './rows.js';

/** Puts the promises of other tours on file as a tour file tells them. */
export async function addBookings(manager: EntityManager, bookings: readonly Booking[]): Promise<void> {
  const rows = bookings.map((each) => ({
    id: randomUUID(),
    itemId: each.item,
    tourName: each.tour,
    period: `[${each.from},${each.to}]`,
    count: each.count ?? null,
  }));
  if (rows.length > 0) await manager.getRepository(BookingRow).insert(rows);
}
