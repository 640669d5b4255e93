import { useMemo } from 'react';
import { type Node, renderMarkup } from '#drawings';

/** A drawing or a sheet of the libs on screen; its texts are escaped where the markup is made. */
export function Drawing({ of, wide = false }: { of: Node; wide?: boolean }) {
  const markup = useMemo(() => renderMarkup(of), [of]);
  return <div className={wide ? 'wide' : undefined} dangerouslySetInnerHTML={{ __html: markup }} />;
}
