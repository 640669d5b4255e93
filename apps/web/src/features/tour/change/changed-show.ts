import { z } from 'zod';
import type { Show } from '#tour-file';
import { figureOrNothing, filled } from '../../../ui/typed.js';
import { typedShow } from '../edit/typed-show.js';
import { beamRows, beamsOf, typedBeams } from './beam-rows.js';

/** A show as its form holds it, but for its hangs and its loading. */
export const changedShow = typedShow.extend({
  loadRule: filled('a load rule'),
  personsBelow: z.boolean(),
  movesOverPersons: z.boolean(),
  useCase: z.string(),
  outdoor: z.boolean(),
  venueId: z.string(),
  datum: z.string().trim(),
  windAction: z.string().trim(),
  hangsApartMm: figureOrNothing('a distance in millimetres, or nothing', { min: 0, max: 100_000 }),
  beams: typedBeams,
});

export type TypedShow = z.output<typeof changedShow>;

export const typedOfShow = (show: Show, venueId: string): z.input<typeof changedShow> => ({
  show: show.name,
  venue: show.venue,
  timeZone: show.timeZone,
  from: show.from,
  to: show.to,
  loadRule: show.loadRule,
  personsBelow: show.personsBelow,
  movesOverPersons: show.movesOverPersons ?? false,
  useCase: show.useCase ?? '',
  outdoor: show.outdoor ?? false,
  venueId,
  datum: show.datum ?? '',
  windAction: show.windAction ?? '',
  hangsApartMm: show.hangsApartMm === undefined ? '' : String(show.hangsApartMm),
  beams: beamRows(show.beams),
});

/** The show with what was typed; what the form does not hold stays as it is on file, and saved unchanged it is the same. */
export function showOf(show: Show, { show: name, movesOverPersons, outdoor, venueId: _venue, ...typedAll }: TypedShow): Show {
  const { datum, windAction, hangsApartMm, beams, useCase, ...typed } = typedAll;
  const {
    movesOverPersons: _moves,
    outdoor: _outdoor,
    datum: _datum,
    windAction: _wind,
    useCase: _case,
    hangsApartMm: _apart,
    beams: before,
    ...rest
  } = show;
  return {
    ...rest,
    ...typed,
    name,
    ...(movesOverPersons || show.movesOverPersons !== undefined ? { movesOverPersons } : {}),
    ...(outdoor || show.outdoor !== undefined ? { outdoor } : {}),
    ...(useCase === '' ? {} : { useCase }),
    ...(datum === '' ? {} : { datum }),
    ...(windAction === '' ? {} : { windAction }),
    ...(hangsApartMm === undefined ? {} : { hangsApartMm }),
    ...(beams.length === 0 && before === undefined ? {} : { beams: [...beamsOf(beams, before)] }),
  };
}
