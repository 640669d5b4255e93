import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { itemKinds, itemStates } from '#tour-file';
import { graphql } from '#contracts';
import { request } from '../../../platform/request.js';
import { modelsQuery } from '../operations.js';
import type { useItemsAddress } from './items-asked.js';

const depotsQuery = graphql(`query RegisterDepots { depots }`);

type Given = Pick<ReturnType<typeof useItemsAddress>, 'asked' | 'put'>;

/** Search, kind, state, model and depot of the register. */
export function ItemsFilters({ asked, put }: Given) {
  const models = useQuery({ queryKey: ['models'], queryFn: () => request(modelsQuery) });
  const depots = useQuery({ queryKey: ['depots'], queryFn: () => request(depotsQuery) });
  const named = models.data?.catalogueModels.filter((each) => each.itemCount > 0).map((each) => each.model) ?? [];
  return (
    <form className="fields" role="search" aria-label="The register" onSubmit={(event) => event.preventDefault()}>
      <Typed name="search" label="Search" value={asked.search} put={put} placeholder="serial, model, reason ..." />
      <Chosen name="kind" label="Kind" all="all kinds" among={itemKinds} value={asked.kind} put={put} />
      <Chosen name="state" label="State" all="all states" among={itemStates} value={asked.state} put={put} />
      <Chosen name="model" label="Model" all="all models" among={[...new Set(named)].sort()} value={asked.model} put={put} />
      <Chosen name="depot" label="Depot" all="all depots" among={depots.data?.depots ?? []} value={asked.depot} put={put} />
    </form>
  );
}

type One = { label: string; value: string; put: Given['put'] };

/** What is typed stands in the field at once; the address follows. */
function Typed({ name, label, value, put, placeholder }: One & { name: 'search'; placeholder: string }) {
  const [typed, type] = useState(value);
  const [seen, see] = useState(value);
  if (seen !== value) {
    see(value);
    if (value !== typed.trim()) type(value);
  }
  return (
    <label>
      {label}
      <input
        type="search"
        value={typed}
        placeholder={placeholder}
        onChange={(event) => {
          type(event.target.value);
          put(name, event.target.value);
        }}
      />
    </label>
  );
}

function Chosen({
  name,
  label,
  all,
  among,
  value,
  put,
}: One & { name: 'kind' | 'state' | 'model' | 'depot'; all: string; among: readonly string[] }) {
  const known = value === '' || among.includes(value) ? among : [...among, value];
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => put(name, event.target.value)}>
        <option value="">{all}</option>
        {known.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
    </label>
  );
}
