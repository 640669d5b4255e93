import { useMemo } from 'react';
import { type Node, onePersonLine, renderMarkup, withOnePersonLine } from '#drawings';
import { scrollsWide } from './scrolls.js';
import { useOnePerson } from '../platform/me.js';

/**
 * A drawing or a sheet of the libs on screen; its texts are escaped where the markup is made. A sheet says where one person only judged it;
 * `releasedAt`: when what it shows was released.
 */
export function Drawing({ of, wide = false, releasedAt = null }: { of: Node; wide?: boolean; releasedAt?: string | null | undefined }) {
  const line = onePersonLine(useOnePerson(), releasedAt);
  const markup = useMemo(() => renderMarkup(withOnePersonLine(of, line)), [of, line]);
  return <div {...(wide ? scrollsWide : {})} dangerouslySetInnerHTML={{ __html: markup }} />;
}
