import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { Link, useNavigate, useParams } from 'react-router';
import { graphql } from '#contracts';
import { angle, drawHang, formatMass, slackSentence } from '#drawings';
import type { BoxModel, GridModel, Hang, Tour } from '#tour-file';
import type { Person } from '../../app/person.js';
import { Refused, request } from '../../platform/request.js';
import { useSettings } from '../../platform/settings.js';
import { Drawing } from '../../ui/drawing.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page, Part } from '../../ui/page.js';
import { saveTour, tourQuery } from '../tour/operations.js';
import { type Models, previewHang } from './hang-preview.js';
import { readPastedRows } from './paste-rows.js';
import { RiggingForm } from './rigging-form.js';

const kitQuery = graphql(`query HangModels { catalogueModels { kind model data } }`);

interface Kit extends Models {
  readonly names: Record<string, readonly string[]>;
}

/** The hangs of a show, entered by form or pasted, drawn at once. */
export function HangEditor({ me }: { me: Person }) {
  const { tourId = '', showId = '' } = useParams();
  const tour = useQuery({ queryKey: ['tour', tourId], queryFn: () => request(tourQuery, { id: tourId }), refetchOnWindowFocus: false });
  const kit = useQuery({
    queryKey: ['hang-models'],
    queryFn: async (): Promise<Kit> => {
      const { catalogueModels } = await request(kitQuery);
      const ofKind = <T,>(kind: string) => catalogueModels.filter((each) => each.kind === kind).map((each) => each.data as T);
      const names = Object.fromEntries(
        ['hoists', 'shackles', 'slings', 'looms'].map((kind) => [
          kind,
          catalogueModels.filter((each) => each.kind === kind).map((each) => each.model),
        ]),
      );
      return { boxes: ofKind<BoxModel>('boxes'), grids: ofKind<GridModel>('grids'), names };
    },
  });
  if (me.role !== 'system') return <Page title="Hangs">The system tech changes the hangs.</Page>;
  return (
    <Loaded query={tour}>
      {({ tour: { version, tour: data } }) => (
        <Loaded query={kit}>{(models) => <Editor key={version} tour={data} version={version} showId={showId} kit={models} />}</Loaded>
      )}
    </Loaded>
  );
}

function Editor({ tour, version, showId, kit }: { tour: Tour; version: number; showId: string; kit: Kit }) {
  const show = tour.shows.find((each) => each.id === showId);
  const [hangs, setHangs] = useState<readonly Hang[]>(show?.hangs ?? []);
  const client = useQueryClient();
  const navigate = useNavigate();
  const save = useMutation({
    mutationFn: () =>
      request(saveTour, {
        tour: { ...tour, shows: tour.shows.map((each) => (each.id === showId ? { ...each, hangs: [...hangs] } : each)) },
        expectedVersion: version,
      }),
    onSuccess: async () => {
      await client.invalidateQueries();
      await navigate(`/tours/${tour.id}/shows/${showId}`);
    },
  });
  if (!show) return <Page title="Hangs">There is no such show.</Page>;
  const showIndex = tour.shows.indexOf(show);
  const faults = save.error instanceof Refused ? save.error.faults : [];
  const change = (index: number, hang: Hang) => setHangs(hangs.map((each, at) => (at === index ? hang : each)));
  return (
    <Page
      title={`Hangs of ${show.name}`}
      lede={<Link to={`/tours/${tour.id}/shows/${showId}`}>Back to the show without saving</Link>}
      actions={
        <button type="button" disabled={save.isPending} onClick={() => save.mutate()}>
          Save the hangs
        </button>
      }
    >
      <Faults of={save.error} />
      {hangs.map((hang, index) => (
        <HangForm
          key={index}
          number={index + 1}
          hang={hang}
          hangs={hangs}
          kit={kit}
          faultsAt={(path) =>
            faults
              .filter(
                (each) =>
                  each.field === `tour.shows[${showIndex}].hangs[${index}]${path}` ||
                  each.field === `shows[${showIndex}].hangs[${index}]${path}`,
              )
              .map((each) => `found ${JSON.stringify(each.value)}, wanted ${each.wanted}`)
          }
          onChange={(next) => change(index, next)}
          onRemove={() => setHangs(hangs.filter((_, at) => at !== index))}
        />
      ))}
      <button
        type="button"
        className="plain"
        onClick={() =>
          setHangs([
            ...hangs,
            {
              id: `Hang ${hangs.length + 1}`,
              grid: kit.grids[0]?.model,
              goesUp: 1,
              trimHeightMm: 8000,
              tiltDownDeg: 0,
              picks: firstPicks(kit),
              boxes: [],
              extras: [],
              partLoad: 'bottom',
            },
          ])
        }
      >
        Add a hang
      </button>
    </Page>
  );
}

function firstPicks(kit: Kit): Hang['picks'] {
  const holes = kit.grids[0]?.holes ?? [];
  const pick = (hole: string | undefined) => ({
    hole: hole ?? '',
    hoist: kit.names.hoists?.[0] ?? '',
    shackles: kit.names.shackles?.slice(0, 1) ?? [],
    slings: kit.names.slings?.slice(0, 1) ?? [],
  });
  return [pick(holes[2]?.hole), pick(holes.at(-3)?.hole)].map((each) => ({
    ...each,
    shackles: [...each.shackles],
    slings: [...each.slings],
  }));
}

interface FormProps {
  readonly number: number;
  readonly hang: Hang;
  readonly hangs: readonly Hang[];
  readonly kit: Kit;
  readonly faultsAt: (path: string) => readonly string[];
  readonly onChange: (hang: Hang) => void;
  readonly onRemove: () => void;
}

function HangForm({ number, hang, hangs, kit, faultsAt, onChange, onRemove }: FormProps) {
  const original = hangs.find((each) => each.id === hang.mirrorOf);
  const shown: Hang = original ? { ...original, id: hang.id } : hang;
  const preview = useMemo(() => previewHang(shown, kit), [shown, kit]);
  const { units } = useSettings();
  const grid = kit.grids.find((each) => each.model === shown.grid);
  return (
    <Part
      number={number}
      title={hang.id}
      margin={
        preview ? (
          <p className="note">
            <b>{formatMass(preview.massKg, units)}</b> without looms, {angle(preview.tiltDownDeg)}. {slackSentence(preview)}
          </p>
        ) : (
          <p className="note look">
            <b>look at this</b> Not drawn: a model, a hole or the boxes are missing.
          </p>
        )
      }
    >
      <div className="fields">
        <label>
          Name
          <input value={hang.id} onChange={(event) => onChange({ ...hang, id: event.target.value })} />
        </label>
        <label>
          Mirror of
          <select value={hang.mirrorOf ?? ''} onChange={(event) => onChange(mirror(hang, event.target.value, original))}>
            <option value="">no other hang</option>
            {hangs
              .filter((each) => each !== hang && each.mirrorOf === undefined)
              .map((each) => (
                <option key={each.id}>{each.id}</option>
              ))}
          </select>
        </label>
        <Num label="Goes up (1 = first)" value={hang.goesUp} onChange={(goesUp) => onChange({ ...hang, goesUp })} />
        <Num label="Trim height, mm" value={hang.trimHeightMm} onChange={(trimHeightMm) => onChange({ ...hang, trimHeightMm })} />
        <label>
          Height of the points, mm
          <input
            type="number"
            step="any"
            placeholder="not on file"
            value={hang.pointHeightMm ?? ''}
            onChange={(event) => onChange({ ...hang, pointHeightMm: event.target.value === '' ? undefined : event.target.valueAsNumber })}
          />
        </label>
        {!original && (
          <label>
            Grid
            <select value={hang.grid ?? ''} onChange={(event) => onChange({ ...hang, grid: event.target.value })}>
              {kit.grids.map((each) => (
                <option key={each.model}>{each.model}</option>
              ))}
            </select>
          </label>
        )}
        {!original && hang.picks.length >= 2 && (
          <Num
            label="Tilt, degrees nose down"
            value={hang.tiltDownDeg ?? 0}
            onChange={(tiltDownDeg) => onChange({ ...hang, tiltDownDeg })}
          />
        )}
        {!original && (
          <label>
            Picks
            <select value={hang.picks.length} onChange={(event) => onChange(withPicks(hang, Number(event.target.value), kit))}>
              <option value={1}>one</option>
              <option value={2}>two</option>
              {[3, 4, 5, 6, 7, 8].map((count) => (
                <option key={count} value={count}>
                  {count}, to be measured
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      {['', '.grid', '.mirrorOf', '.picks', '.tiltDownDeg', '.picks[0].hole', '.picks[1].hole', '.boxes'].flatMap((path) =>
        faultsAt(path).map((each) => (
          <p key={path} className="said">
            {path} {each}
          </p>
        )),
      )}
      {!original && (
        <details>
          <summary>Picks, steel, points and tilts</summary>
          <RiggingForm hang={hang} grid={grid} names={kit.names} onChange={onChange} />
        </details>
      )}
      {original ? (
        <p>Boxes, picks and tilt are those of {original.id}, mirrored. They follow it until you choose “no other hang”.</p>
      ) : (
        <Boxes hang={hang} kit={kit} faultsAt={faultsAt} onChange={onChange} />
      )}
      {preview && <Drawing of={drawHang(preview, units)} />}
      {preview && (
        <p className="caution">
          Loads are computed from the figures on file. A competent person confirms them against the maker’s rated data, local rules and the
          structure before anything is lifted.
        </p>
      )}
      <button type="button" className="plain small" onClick={onRemove}>
        Remove this hang
      </button>
    </Part>
  );
}

function Num({ label, value, onChange }: { label: string; value: number; onChange: (value: number) => void }) {
  return (
    <label>
      {label}
      <input type="number" step="any" value={value} onChange={(event) => onChange(event.target.valueAsNumber || 0)} />
    </label>
  );
}

/** Told otherwise, a mirror keeps what it had of its original as its own. */
function mirror(hang: Hang, of: string, original: Hang | undefined): Hang {
  if (of !== '')
    return { ...hang, mirrorOf: of, grid: undefined, tiltDownDeg: undefined, picks: [], boxes: [], loom: undefined, extras: [] };
  const { mirrorOf: _mirrorOf, ...rest } = hang;
  return original
    ? {
        ...rest,
        grid: original.grid,
        tiltDownDeg: original.tiltDownDeg,
        picks: original.picks,
        boxes: original.boxes,
        loom: original.loom,
        extras: original.extras,
      }
    : rest;
}

function withPicks(hang: Hang, count: number, kit: Kit): Hang {
  const holes = kit.grids.find((each) => each.model === hang.grid)?.holes ?? [];
  const free = holes.filter((each) => !hang.picks.some((pick) => pick.hole === each.hole)).reverse();
  const more = free.slice(0, Math.max(0, count - hang.picks.length)).map(({ hole }) => ({ ...firstPicks(kit)[0]!, hole }));
  const picks = [...hang.picks, ...more].slice(0, count);
  return { ...hang, picks, tiltDownDeg: count === 1 ? undefined : (hang.tiltDownDeg ?? 0) };
}

function Boxes({ hang, kit, faultsAt, onChange }: Pick<FormProps, 'hang' | 'kit' | 'faultsAt' | 'onChange'>) {
  const [pasted, setPasted] = useState('');
  const rows = readPastedRows(pasted);
  const wrong = rows.filter((row) => row.said !== null);
  const use = () => {
    onChange({ ...hang, boxes: rows.flatMap((row) => (row.box ? [row.box] : [])) });
    setPasted('');
  };
  return (
    <>
      <div className="scroll">
        <table className="tight">
          <thead>
            <tr>
              <th className="num">Pos.</th>
              <th>Model</th>
              <th>Splay</th>
              <th>Serial, where one is wanted</th>
              <th />
            </tr>
          </thead>
          <tbody>
            {hang.boxes.map((box, index) => {
              const model = kit.boxes.find((each) => each.model === box.model);
              const allowed = index === 0 ? kit.grids.find((each) => each.model === hang.grid)?.splaysDeg : model?.splaysDeg;
              const said = [
                ...(model ? [] : [`unknown model: wanted one of ${kit.boxes.map((each) => each.model).join(', ')}`]),
                ...(allowed && !allowed.includes(box.splayDeg) ? [`wrong splay: wanted one of ${allowed.join(', ')}`] : []),
                ...faultsAt(`.boxes[${index}].serial`),
              ];
              const set = (next: Partial<typeof box>) =>
                onChange({ ...hang, boxes: hang.boxes.map((each, at) => (at === index ? { ...each, ...next } : each)) });
              return (
                <tr key={index} className={said.length > 0 ? 'bad' : undefined}>
                  <td className="num">{index + 1}</td>
                  <td>
                    <select
                      aria-label={`Model of position ${index + 1}`}
                      value={box.model}
                      onChange={(event) => set({ model: event.target.value })}
                    >
                      {!model && <option>{box.model}</option>}
                      {kit.boxes.map((each) => (
                        <option key={each.model}>{each.model}</option>
                      ))}
                    </select>
                  </td>
                  <td>
                    <input
                      aria-label={`Splay of position ${index + 1}`}
                      type="number"
                      step="any"
                      style={{ width: 90 }}
                      value={box.splayDeg}
                      onChange={(event) => set({ splayDeg: event.target.valueAsNumber || 0 })}
                    />
                  </td>
                  <td>
                    <input
                      aria-label={`Serial of position ${index + 1}`}
                      className="mono"
                      value={box.serial ?? ''}
                      onChange={(event) => set({ serial: event.target.value || undefined })}
                    />
                    {said.map((each) => (
                      <p key={each} className="said">
                        ◐ {each}
                      </p>
                    ))}
                  </td>
                  <td>
                    <button
                      type="button"
                      className="plain small"
                      aria-label={`Remove position ${index + 1}`}
                      onClick={() => onChange({ ...hang, boxes: hang.boxes.filter((_, at) => at !== index) })}
                    >
                      Remove
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <div className="row">
        <button
          type="button"
          className="plain small"
          onClick={() =>
            onChange({
              ...hang,
              boxes: [
                ...hang.boxes,
                {
                  model: hang.boxes.at(-1)?.model ?? kit.boxes[0]?.model ?? '',
                  splayDeg: hang.boxes.length === 0 ? (kit.grids.find((each) => each.model === hang.grid)?.splaysDeg[0] ?? 0) : 0,
                },
              ],
            })
          }
        >
          Add a box at the bottom
        </button>
      </div>
      <details>
        <summary>Paste rows from a spreadsheet</summary>
        <label>
          Position, model, splay, and perhaps a serial; a row each
          <textarea
            rows={6}
            value={pasted}
            onChange={(event) => setPasted(event.target.value)}
            placeholder={'1\tPlover\t0.5\n2\tPlover\t1'}
          />
        </label>
        {wrong.map((row) => (
          <p key={row.line} className="said">
            ◐ line {row.line}: {row.said}
          </p>
        ))}
        <button type="button" disabled={rows.length === 0 || wrong.length > 0} onClick={use}>
          Use these {rows.length} boxes
        </button>
      </details>
    </>
  );
}
