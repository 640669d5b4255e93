import { useFormContext } from 'react-hook-form';
import { FieldError, asNumber, asText } from '../../../ui/form.js';
import { withBox } from './change-hang.js';
import type { OfHang } from './of-hang.js';
import { scrolls } from '../../../ui/scrolls.js';

/** The boxes of a hang from the top, a row each. */
export function BoxTable({ at, hang, kit, onChange }: OfHang) {
  return (
    <>
      <div {...scrolls}>
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
            {hang.boxes.map((_, index) => (
              <BoxRow key={index} index={index} at={at} hang={hang} kit={kit} onChange={onChange} />
            ))}
          </tbody>
        </table>
      </div>
      <FieldError name={`${at}.boxes`} />
      <div className="row">
        <button type="button" className="plain small" onClick={() => onChange(withBox(hang, kit))}>
          Add a box at the bottom
        </button>
      </div>
    </>
  );
}

function BoxRow({ index, at, hang, kit, onChange }: OfHang & { readonly index: number }) {
  const { register } = useFormContext();
  const box = hang.boxes[index];
  if (!box) return null;
  const model = kit.boxes.find((each) => each.model === box.model);
  const allowed = index === 0 ? kit.grids.find((each) => each.model === hang.grid)?.splaysDeg : model?.splaysDeg;
  const said = [
    ...(model ? [] : [`unknown model: wanted one of ${kit.boxes.map((each) => each.model).join(', ')}`]),
    ...(allowed && !allowed.includes(box.splayDeg) ? [`wrong splay: wanted one of ${allowed.join(', ')}`] : []),
  ];
  const name = `${at}.boxes.${index}`;
  return (
    <tr className={said.length > 0 ? 'bad' : undefined}>
      <td className="num">{index + 1}</td>
      <td>
        <select aria-label={`Model of position ${index + 1}`} {...register(`${name}.model`)}>
          {!model && <option>{box.model}</option>}
          {kit.boxes.map((each) => (
            <option key={each.model}>{each.model}</option>
          ))}
        </select>
        <FieldError name={`${name}.model`} />
      </td>
      <td>
        <input
          aria-label={`Splay of position ${index + 1}`}
          type="number"
          step="any"
          className="short"
          {...register(`${name}.splayDeg`, asNumber)}
        />
        <FieldError name={`${name}.splayDeg`} />
      </td>
      <td>
        <input aria-label={`Serial of position ${index + 1}`} className="mono" {...register(`${name}.serial`, asText)} />
        {said.map((each) => (
          <p key={each} className="said">
            ◐ {each}
          </p>
        ))}
        <FieldError name={`${name}.serial`} />
      </td>
      <td>
        <button
          type="button"
          className="plain small"
          aria-label={`Remove position ${index + 1}`}
          onClick={() => onChange({ ...hang, boxes: hang.boxes.filter((_, other) => other !== index) })}
        >
          Remove
        </button>
      </td>
    </tr>
  );
}
