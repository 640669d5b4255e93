import { type ReactNode, useEffect } from 'react';
import { Faults } from './faults.js';

export function Page({ title, lede, actions, children }: { title: string; lede?: ReactNode; actions?: ReactNode; children: ReactNode }) {
  useEffect(() => {
    document.title = `${title} · Cartwright`;
  }, [title]);
  return (
    <main>
      <h1>{title}</h1>
      {lede && <p className="lede">{lede}</p>}
      {actions && <div className="row actions">{actions}</div>}
      {children}
    </main>
  );
}

/** A numbered section with its margin. */
export function Part({
  number,
  title,
  margin,
  children,
  id,
}: {
  number: number | string;
  title: string;
  margin?: ReactNode;
  children: ReactNode;
  id?: string;
}) {
  return (
    <section id={id} aria-label={title}>
      <div className="n" aria-hidden="true">
        {number}
      </div>
      <div>
        <h2>{title}</h2>
        {children}
      </div>
      <aside>{margin}</aside>
    </section>
  );
}

/** Waiting, an error, or the content. */
export function Loaded<T>({
  query,
  children,
}: {
  query: { readonly data: T | undefined; readonly isError: boolean; readonly error: Error | null };
  children: (data: T) => ReactNode;
}) {
  if (query.data !== undefined)
    return (
      <>
        {query.isError && <Faults of={query.error} />}
        {children(query.data)}
      </>
    );
  return query.isError ? <Faults of={query.error} /> : <p className="quiet">Reading ...</p>;
}
