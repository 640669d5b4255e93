import { useSearchParams } from 'react-router';

/** What a list shows, kept in the address: it can be sent to another, printed and kept by name. `search` is that part of the address. */
export function useListAddress<Name extends string>(names: readonly Name[]) {
  const [params, setParams] = useSearchParams();
  const asked = Object.fromEntries(names.map((name) => [name, params.get(name)?.trim() ?? ''])) as Record<Name, string>;
  const put = (name: Name, value: string) =>
    setParams(
      (before) => {
        const next = new URLSearchParams(before);
        if (value.trim() === '') next.delete(name);
        else next.set(name, value);
        return next;
      },
      { replace: true },
    );
  const search = new URLSearchParams(names.flatMap((name) => (asked[name] === '' ? [] : [[name, asked[name]]]))).toString();
  return { asked, put, search, show: (next: string) => setParams(new URLSearchParams(next), { replace: true }) };
}
