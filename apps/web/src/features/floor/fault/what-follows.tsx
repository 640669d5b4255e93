import { Link } from 'react-router';
import type { Sheet } from './use-fault-sheet.js';

interface FollowsProps {
  readonly itemId: string;
  readonly then: 'out' | 'bottom' | 'flies';
  readonly sheet: Sheet | undefined;
}

/** What is so from now on, where it flies, and what else there is. */
export function WhatFollows({ itemId, then, sheet }: FollowsProps) {
  const flies = sheet?.fliesIn ?? [];
  return (
    <>
      <div className={then === 'out' ? 'answer stop' : 'answer'} role="alert">
        {then === 'out' && <i>■ From now on {itemId} may not fly.</i>}
        {then === 'bottom' && `◐ ${itemId} flies on: hang it at the bottom. Whoever confirms its cart is told.`}
        {then === 'flies' && `○ ${itemId} flies meanwhile and is repaired at home.`}
        {then === 'out' && (
          <p>
            {flies.map(({ show, from, cart, load }) => `It is in ${cart ?? load} (${show}, ${from}). `)}
            {sheet?.spare ? `Another of its model: ${sheet.spare}.` : sheet ? 'No other of its model is free.' : null}
          </p>
        )}
      </div>
      {then === 'out' &&
        flies.slice(0, 3).map(({ tourId, showId, show }) => (
          <p key={`${tourId} ${showId}`}>
            <Link className="btn" to={`/tours/${tourId}/shows/${showId}`}>
              Find another box for {show}
            </Link>
          </p>
        ))}
    </>
  );
}
