import { useEffect } from 'react';

/** Opens the print window by itself once everything that is to be printed stands on the page. */
export function usePrint(ready: boolean, title: string): void {
  useEffect(() => {
    if (!ready) return undefined;
    document.title = title;
    const later = setTimeout(() => window.print(), 400);
    return () => clearTimeout(later);
  }, [ready, title]);
}
