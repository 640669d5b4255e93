import { useMemo } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { angle, drawHang, formatMass, slackSentence } from '#drawings';
import type { Hang } from '#tour-file';
import { useSettings } from '../../../platform/settings.js';
import { Drawing } from '../../../ui/drawing.js';
import { Part } from '../../../ui/page.js';
import { BoxTable } from './box-table.js';
import { HangFields } from './hang-fields.js';
import { type PreviewedHang, previewHang } from './hang-preview.js';
import type { Kit } from './kit.js';
import type { OfHang } from './of-hang.js';
import { PasteRows } from './paste-rows-form.js';
import { RiggingForm } from './rigging-form.js';

/** One hang: its fields, rigging and boxes, and beside them how it would hang. */
export function HangForm({ index, kit, onRemove, onCopy }: { index: number; kit: Kit; onRemove: () => void; onCopy: () => void }) {
  const { setValue } = useFormContext<{ hangs: Hang[] }>();
  const hangs = useWatch<{ hangs: Hang[] }, 'hangs'>({ name: 'hangs' });
  const at = `hangs.${index}` as const;
  const hang = hangs[index];
  if (!hang) return null;
  const original = hangs.find((each) => each.id === hang.mirrorOf);
  const parts: OfHang = { at, hang, kit, onChange: (next) => setValue(at, next, { shouldDirty: true, shouldValidate: true }) };
  return (
    <Previewed number={index + 1} hang={original ? asOriginal(hang, original) : hang} kit={kit}>
      <HangFields {...parts} hangs={hangs} original={original} />
      {original ? (
        <p>Boxes, picks and tilt are those of {original.name ?? original.id}, mirrored. They follow it until you choose “no other hang”.</p>
      ) : (
        <>
          <details>
            <summary>Picks, steel, points and tilts</summary>
            <RiggingForm {...parts} />
          </details>
          <BoxTable {...parts} />
          <PasteRows boxes={hang.boxes} onUse={(boxes) => parts.onChange({ ...hang, boxes })} />
        </>
      )}
      <div className="row">
        <button type="button" className="plain small" onClick={onCopy}>
          Copy this hang
        </button>
        <button type="button" className="plain small" onClick={onRemove}>
          Remove this hang
        </button>
      </div>
    </Previewed>
  );
}

/** A mirror has the boxes and picks of its original, and heights of its own. */
const asOriginal = ({ id, name, trimHeightMm, ...own }: Hang, original: Hang): Hang => ({
  ...original,
  id,
  name,
  trimHeightMm,
  pointHeightMm: own.pointHeightMm ?? original.pointHeightMm,
  trimTo: own.trimTo ?? original.trimTo,
  deckHeightMm: own.deckHeightMm ?? original.deckHeightMm,
});

function Previewed({ number, hang, kit, children }: { number: number; hang: Hang; kit: Kit; children: React.ReactNode }) {
  const preview = useMemo(() => previewHang(hang, kit), [hang, kit]);
  const { units } = useSettings();
  return (
    <Part number={number} title={hang.name ?? hang.id} margin={<Summary preview={preview} />}>
      {children}
      {preview && <Drawing of={drawHang(preview, units)} />}
      {preview && (
        <p className="caution">
          Loads are computed from the figures on file. A competent person confirms them against the maker’s rated data, local rules and the
          structure before anything is lifted.
        </p>
      )}
    </Part>
  );
}

function Summary({ preview }: { preview: PreviewedHang | undefined }) {
  const { units } = useSettings();
  if (!preview)
    return (
      <p className="note look">
        <b>check</b> Not drawn: a model, a hole, a figure or the boxes are missing.
      </p>
    );
  return (
    <p className="note">
      <b>{formatMass(preview.massKg, units)}</b> without looms, {angle(preview.tiltDownDeg)}. {slackSentence(preview)}
    </p>
  );
}
