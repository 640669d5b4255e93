/** Lists of a file, and what one thing of each is called. */
const one: Readonly<Record<string, string>> = {
  boxes: 'box',
  looms: 'loom',
  trucks: 'truck',
  axles: 'axle',
  freight: 'freight',
  hangs: 'hang',
  shows: 'show',
  picks: 'pick',
  legs: 'leg',
  cases: 'case',
  slots: 'slot',
};
const oneOf = (list: string): string => one[list] ?? list.replace(/s$/, '');

/** Words of a name of the program: `bodyHeightMm` is "body height mm". */
const spaced = (name: string): string => name.replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();

/** Where a fault is, as a person counts: `tour.shows[0].hangs[1].boxes[2].model` is "show 1, hang 2, box 3, model". */
export function pathInWords(path: string): string {
  const parts = path.split('.').flatMap((part) => {
    const [, name = '', places = ''] = /^([^[]*)((?:\[\d+\])*)$/.exec(part) ?? [null, part, ''];
    const numbers = [...places.matchAll(/\d+/g)].map(([digits]) => Number(digits) + 1);
    return [numbers.length === 0 ? spaced(name) : `${spaced(oneOf(name))} ${numbers.join(', ')}`.trim()];
  });
  return (parts.length > 1 && (parts[0] === 'tour' || parts[0] === 'catalogue') ? parts.slice(1) : parts).join(', ');
}
