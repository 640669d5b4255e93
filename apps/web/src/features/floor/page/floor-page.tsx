import { type ReactNode, useEffect, useState } from 'react';
import { Link } from 'react-router';
import { OutboxNote } from '../../../platform/outbox/outbox-note.js';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { useClockSentence } from '../../../platform/use-clock.js';
import { type KeptScreens, useKeptScreens } from '../../../platform/kept-screens.js';
import { Note } from '../../../ui/notes.js';

interface FloorPageProps {
  readonly title: ReactNode;
  /** Of the window. */
  readonly name: string;
  readonly back: string;
  readonly children: ReactNode;
  /** The way on, where the thumb is. */
  readonly foot?: ReactNode;
}

/** One question: what it is about in a line at the top, with what this device has not sent yet; the way on at the bottom. */
export function FloorPage({ title, name, back, children, foot }: FloorPageProps) {
  const [isOpen, setIsOpen] = useState(false);
  const { notTaken } = useOutbox();
  const clock = useClockSentence();
  useEffect(() => {
    document.title = `${name} · Cartwright`;
    scrollTo(0, 0);
  }, [name]);
  return (
    <div className="fl">
      <header className="fl-top">
        <Link className="back" to={back} aria-label="Back">
          ‹
        </Link>
        <h1>{title}</h1>
        <NetLine isOpen={isOpen} onPress={() => setIsOpen(!isOpen)} />
      </header>
      <div className="fl-kept">
        {(isOpen || notTaken.length > 0) && <OutboxNote />}
        {isOpen && <KeptLine />}
        {clock && <Note weight="look">{clock}</Note>}
      </div>
      <main className="fl-body">{children}</main>
      {foot && <footer className="fl-foot">{foot}</footer>}
    </div>
  );
}

/** Whether all that was done here has arrived. */
function NetLine({ isOpen, onPress }: { isOpen: boolean; onPress: () => void }) {
  const { unsent, notTaken } = useOutbox();
  const words = notTaken.length > 0 ? `■ not taken: ${notTaken.length}` : unsent > 0 ? `◐ not sent yet: ${unsent}` : '○ all sent';
  return (
    <button type="button" className={unsent + notTaken.length > 0 ? 'net wait' : 'net'} aria-expanded={isOpen} onClick={onPress}>
      <span aria-live="polite">{words}</span>
    </button>
  );
}

const keptWords: Readonly<Record<KeptScreens, string>> = {
  kept: 'These screens open without a network too, with what this device read last. What needs one says so.',
  'on its way': 'These screens are being kept on this device; until then they open with a network only.',
  'no trusted address':
    'These screens open with a network only: a browser keeps pages of an https address (or of its own machine). What you do here is kept on this device all the same.',
  'not by this browser':
    'These screens open with a network only: this browser keeps no pages. What you do here is kept on this device all the same.',
};

/** Whether the page opens in a basement, and why not. */
function KeptLine() {
  return <p className="quiet">{keptWords[useKeptScreens()]}</p>;
}
