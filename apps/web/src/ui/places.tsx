import { useId, useState } from 'react';
import { useController } from 'react-hook-form';
import { countryCodes, isPlaceCode, nearestPlace, placeName } from '#trade';
import { Choice, FieldError } from './form.js';

type Choices = readonly (readonly [value: string, word: string])[];

const named = (codes: readonly string[]): string[] => [...codes].sort((a, b) => placeName(a).slice(3).localeCompare(placeName(b).slice(3)));

/** Places to choose from: those with examination rules on file first, parts of countries among them, then all countries by name. */
function placeChoices(ruled: readonly string[]): Choices {
  const withRules = named([...new Set(ruled)].filter(isPlaceCode));
  return [
    ['', 'choose one'],
    ...withRules.map((code) => [code, `${placeName(code)}: rules on file`] as const),
    ...countriesByName.filter((code) => !withRules.includes(code)).map((code) => [code, placeName(code)] as const),
  ];
}

const countriesByName = named(countryCodes);

const zones = ['UTC', ...Intl.supportedValuesOf('timeZone')];

/** Zones of the time zone database that this device knows; one on file that it calls otherwise stays. */
export const zoneChoices = (onFile: string): Choices =>
  (onFile === '' || zones.includes(onFile) ? zones : [onFile, ...zones]).map((zone) => [zone, zone.replaceAll('_', ' ')] as const);

/** What stands where a code should: said, with the nearest. */
export const whyNoPlace = (text: string): string | undefined =>
  text === '' || isPlaceCode(text) ? undefined : `“${text}” is not a code on the list; the nearest is ${placeName(nearestPlace(text))}`;

/** The same, with what is on file and is not among them. */
export function placesFor(onFile: string, ruled: readonly string[]): Choices {
  const choices = placeChoices(ruled);
  if (choices.some(([code]) => code === onFile)) return choices;
  return [[onFile, isPlaceCode(onFile) ? placeName(onFile) : `${onFile}: not on the list`], ...choices];
}

/** A country, or a place with rules; one on file that is none is said and chosen anew. */
export function PlaceChoice({
  name,
  label,
  ruled,
  onFile = '',
}: {
  name: string;
  label: string;
  ruled: readonly string[];
  onFile?: string;
}) {
  const why = whyNoPlace(onFile);
  return (
    <Choice
      name={name}
      label={label}
      choices={placesFor(onFile, ruled)}
      {...(why === undefined ? {} : { description: `■ ${why}. Choose it anew.` })}
    />
  );
}

/** Several places: those chosen, each to be taken out, and one more to choose. The field holds a list of codes. */
export function PlacesChoice({ name, label, ruled }: { name: string; label: string; ruled: readonly string[] }) {
  const { field } = useController<Record<string, string[]>>({ name });
  const chosen = field.value ?? [];
  const [next, setNext] = useState('');
  const id = useId();
  const add = (code: string) => {
    setNext('');
    if (code !== '' && !chosen.includes(code)) field.onChange([...chosen, code]);
  };
  return (
    <fieldset>
      <legend>{label}</legend>
      <ul>
        {chosen.map((code) => (
          <li key={code}>
            {placeName(code)}
            {whyNoPlace(code) === undefined &&
              !ruled.some((rule) => code === rule || code.startsWith(`${rule}-`)) &&
              ': ■ no rules on file'}
            {whyNoPlace(code) !== undefined && <> ■ {whyNoPlace(code)}</>}{' '}
            {whyNoPlace(code) !== undefined && (
              <button
                type="button"
                className="small"
                onClick={() => field.onChange([...new Set(chosen.map((each) => (each === code ? nearestPlace(code) : each)))])}
              >
                Take {placeName(nearestPlace(code))}
              </button>
            )}{' '}
            <button
              type="button"
              className="plain small"
              aria-label={`Take out ${placeName(code)}`}
              onClick={() => field.onChange(chosen.filter((each) => each !== code))}
            >
              Take it out
            </button>
          </li>
        ))}
      </ul>
      <label htmlFor={id}>Add a place</label>
      <select id={id} value={next} onChange={(event) => add(event.target.value)}>
        {placeChoices(ruled).map(([value, word]) => (
          <option key={value} value={value}>
            {word}
          </option>
        ))}
      </select>
      <FieldError name={name} />
    </fieldset>
  );
}
