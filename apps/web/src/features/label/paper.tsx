import { useEffect, useState } from 'react';
import { type LabelStock, type labelSheets, labelStocks } from '#drawings';
import { Drawing } from '../../ui/drawing.js';
import './labels.css';

/** The first two stand on the screen; all are printed. */
export function Sheets({ pages }: { pages: ReturnType<typeof labelSheets> }) {
  const [isWhole, setWhole] = useState(false);
  return (
    <>
      <div className={isWhole ? 'labelpages' : 'labelpages few'}>
        {pages.map((each, index) => (
          <Drawing key={index} of={each} />
        ))}
      </div>
      {!isWhole && pages.length > 2 && (
        <p className="noprint">
          <button type="button" className="plain" onClick={() => setWhole(true)}>
            Show all {pages.length} pages
          </button>{' '}
          <span className="quiet">The first two are shown; all are printed.</span>
        </p>
      )}
    </>
  );
}

/** Which paper, and where on it labels are left. */
export function PaperFields({ kept }: { kept: ReturnType<typeof useKeptOnDevice> }) {
  return (
    <>
      <label>
        Paper
        <select value={stockOf(kept)?.id} onChange={(event) => kept.keep('stock', event.target.value)}>
          {labelStocks.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </label>
      <label>
        Labels used up on the first page
        <input inputMode="numeric" value={kept.skip} onChange={(event) => kept.keep('skip', event.target.value.replaceAll(/\D/g, ''))} />
      </label>
    </>
  );
}

export const stockOf = ({ stock }: Kept): LabelStock | undefined => labelStocks.find((each) => each.id === stock) ?? labelStocks[0];

type Kept = Readonly<Record<'stock' | 'skip' | 'prefix', string>>;

/** The paper in the printer belongs to the place where it stands. */
export function useKeptOnDevice(): Kept & { keep: (name: keyof Kept, value: string) => void } {
  const [kept, setKept] = useState<Kept>(() => ({
    stock: '',
    skip: '',
    prefix: '',
    ...(JSON.parse(localStorage.getItem('labels') ?? '{}') as Partial<Kept>),
  }));
  useEffect(() => localStorage.setItem('labels', JSON.stringify({ ...kept, skip: '' })), [kept]);
  return { ...kept, keep: (name, value) => setKept((before) => ({ ...before, [name]: value })) };
}
