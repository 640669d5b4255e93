import { useEffect, useRef, useState } from 'react';
import type { TruckResultOne } from '#pack-plan';
import { TruckScene, type View, startView, turned } from './truck-scene.js';

const keys: Record<string, [azimuth: number, elevation: number, nearer: number]> = {
  ArrowLeft: [-1, 0, 0],
  ArrowRight: [1, 0, 0],
  ArrowUp: [0, 1, 0],
  ArrowDown: [0, -1, 0],
  '+': [0, 0, 1],
  '-': [0, 0, -1],
};
const buttons = [
  ['Turn left', 'ArrowLeft'],
  ['Turn right', 'ArrowRight'],
  ['From above', 'ArrowUp'],
  ['From below', 'ArrowDown'],
  ['Nearer', '+'],
  ['Farther', '-'],
] as const;

/** The load to be turned with the pointer, the arrow keys or buttons; rows numbered, pieces with their names, up to a chosen row. */
export default function TruckSpace({ truck }: { truck: TruckResultOne }) {
  const holder = useRef<HTMLDivElement>(null);
  const scene = useRef<TruckScene | null>(null);
  const [view, setView] = useState<View>(startView);
  const [upTo, setUpTo] = useState(truck.rows.length);
  const [missing, setMissing] = useState(false);
  const drag = useRef<{ x: number; y: number } | null>(null);

  useEffect(() => {
    const at = holder.current;
    if (!at) return undefined;
    try {
      scene.current = new TruckScene(at, truck);
    } catch {
      setMissing(true);
      return undefined;
    }
    const sized = new ResizeObserver(() => scene.current?.fit());
    sized.observe(at);
    return () => {
      sized.disconnect();
      scene.current?.end();
      scene.current = null;
    };
  }, [truck]);
  useEffect(() => scene.current?.show(view, upTo), [view, upTo, truck]);

  if (missing)
    return <p role="note">This browser cannot draw in three dimensions. The drawings from above and from the side show the same load.</p>;
  const press = (key: string) => setView((now) => turned(now, ...keys[key]!));
  return (
    <div className="space">
      {/* eslint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- an application takes keys and the pointer itself */}
      <div
        ref={holder}
        className="canvas"
        role="application"
        aria-label={`The load of truck ${truck.id} in three dimensions. Arrow keys turn it, plus and minus bring it nearer. The table of rows below names every piece.`}
        tabIndex={0}
        onKeyDown={(event) => {
          if (!(event.key in keys)) return;
          event.preventDefault();
          press(event.key);
        }}
        onPointerDown={(event) => {
          drag.current = { x: event.clientX, y: event.clientY };
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={(event) => {
          const from = drag.current;
          if (!from) return;
          drag.current = { x: event.clientX, y: event.clientY };
          setView((now) => turned(now, (event.clientX - from.x) / 20, (event.clientY - from.y) / 20, 0));
        }}
        onPointerUp={() => (drag.current = null)}
        onPointerCancel={() => (drag.current = null)}
      />
      <div className="row">
        {buttons.map(([word, key]) => (
          <button key={key} type="button" className="plain" onClick={() => press(key)}>
            {word}
          </button>
        ))}
        <button type="button" className="plain" onClick={() => setView(startView)}>
          As at first
        </button>
      </div>
      <label>
        Rows shown: 1 to {upTo}
        <input type="range" min={1} max={truck.rows.length} value={upTo} onChange={(event) => setUpTo(Number(event.target.value))} />
      </label>
    </div>
  );
}
