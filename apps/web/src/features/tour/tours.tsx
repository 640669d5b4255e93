import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { Link, useNavigate } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../app/person.js';
import { request } from '../../platform/request.js';
import { Faults } from '../../ui/faults.js';
import { Loaded, Page } from '../../ui/page.js';
import { newTour } from './new-tour.js';
import { saveTour } from './operations.js';

const toursQuery = graphql(`query Tours { tours { id name prepFrom returnTo shows } }`);
const rulesQuery = graphql(`query HouseRules { rules items(kind: "truck", first: 100) { edges { node { id model depot } } } }`);

export function Tours({ me }: { me: Person }) {
  const query = useQuery({ queryKey: ['tours'], queryFn: () => request(toursQuery) });
  return (
    <Page title="Tours" lede="A tour is a chain of shows that share kit and trucks.">
      <Loaded query={query}>
        {({ tours }) =>
          tours.length === 0 ? (
            <p>No tour yet. Make one below, or import a tour file.</p>
          ) : (
            <div className="scroll">
              <table>
                <thead>
                  <tr>
                    <th>Tour</th>
                    <th>First prep day</th>
                    <th>Last return day</th>
                    <th className="num">Shows</th>
                  </tr>
                </thead>
                <tbody>
                  {tours.map((tour) => (
                    <tr key={tour.id}>
                      <td>
                        <Link to={`/tours/${tour.id}`}>{tour.name}</Link>
                      </td>
                      <td>{tour.prepFrom}</td>
                      <td>{tour.returnTo}</td>
                      <td className="num">{tour.shows}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )
        }
      </Loaded>
      {me.role === 'system' && <NewTourForm />}
    </Page>
  );
}

function NewTourForm() {
  const rules = useQuery({ queryKey: ['house-rules'], queryFn: () => request(rulesQuery) });
  const [form, setForm] = useState({
    name: '',
    depot: 'Ferry Lane',
    prepFrom: '',
    returnTo: '',
    jurisdiction: 'UK',
    show: '',
    venue: '',
    timeZone: 'Europe/London',
    from: '',
    to: '',
  });
  const navigate = useNavigate();
  const client = useQueryClient();
  const loadRules = (rules.data?.rules as { loadRules: { id: string }[] } | undefined)?.loadRules ?? [];
  const save = useMutation({
    mutationFn: () => request(saveTour, { tour: newTour(form, loadRules[0]?.id ?? ''), expectedVersion: null }),
    onSuccess: async ({ saveTour: { id } }) => {
      await client.invalidateQueries();
      await navigate(`/tours/${id}`);
    },
  });
  const field = (key: keyof typeof form, label: string, type = 'text') => (
    <label>
      {label}
      <input type={type} required value={form[key]} onChange={(event) => setForm({ ...form, [key]: event.target.value })} />
    </label>
  );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    save.mutate();
  };
  return (
    <details>
      <summary>Make a new tour</summary>
      <form onSubmit={submit}>
        <div className="fields">
          {field('name', 'Name of the tour')}
          {field('depot', 'Depot')}
          {field('prepFrom', 'First prep day', 'date')}
          {field('returnTo', 'Last return day', 'date')}
          {field('jurisdiction', 'Country whose examination rules hold')}
          {field('show', 'First show')}
          {field('venue', 'Venue')}
          {field('timeZone', 'Time zone of the venue')}
          {field('from', 'Load-in day', 'date')}
          {field('to', 'Load-out day', 'date')}
        </div>
        <Faults of={save.error} />
        <button type="submit" disabled={save.isPending}>
          Make the tour
        </button>
      </form>
    </details>
  );
}
