import { type BadInput, type Result, ok, readInput, refuse } from '#kernel';
import { type Kit, type TourFile, tourFileSchema } from '../shapes/index.js';
import { checkCatalogue } from './check-catalogue.js';
import { checkBookings, checkItems } from './check-items.js';
import { checkTour } from './check-tour.js';
import { FaultList } from './fault-list.js';

/** Reads a tour file: first its shape, then everything that has to agree across it. Every fault has field, value, wanted. */
export function readTourFile(input: unknown): Result<TourFile, readonly BadInput[]> {
  const read = readInput(tourFileSchema, input);
  if (!read.ok) return read;
  const faults = checkTourFile(read.value);
  return faults.length === 0 ? ok(read.value) : refuse(faults);
}

/** What does not agree across a register: catalogue, rules and items without any tour. */
export function checkKit(kit: Kit, most?: number): readonly BadInput[] {
  const faults = new FaultList(most);
  checkCatalogue(kit, faults);
  checkItems(kit, faults);
  return faults.faults;
}

/** What does not agree across a tour file of the right shape; empty when all does. */
export function checkTourFile(file: TourFile): readonly BadInput[] {
  const faults = new FaultList();
  checkCatalogue(file, faults);
  checkItems(file, faults);
  checkBookings(file, faults);
  checkTour(file, faults);
  return faults.faults;
}
