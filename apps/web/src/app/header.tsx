import { useMutation, useQueryClient } from '@tanstack/react-query';
import { NavLink } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../platform/request.js';
import { forgetLastRead } from '../platform/last-read.js';
import { useSettings } from '../platform/settings.js';
import type { Person } from '../platform/person.js';

const signOut = graphql(`mutation SignOut { signOut }`);
const roleWords: Record<string, string> = { warehouse: 'warehouse', system: 'system tech', safety: 'safety officer' };

export function Header({ me }: { me: Person }) {
  const { units, light, setUnits, setLight } = useSettings();
  const client = useQueryClient();
  const leave = useMutation({
    mutationFn: () => request(signOut),
    onSuccess: async () => {
      await forgetLastRead();
      client.clear();
      location.assign('/');
    },
  });
  return (
    <header className="top">
      <span className="mark">Cartwright</span>
      <div className="who">
        {me.name}, {roleWords[me.role]}
        <button type="button" className="plain small" onClick={() => leave.mutate()}>
          Sign out
        </button>
        <button type="button" className="plain small" onClick={() => setUnits(units === 'metric' ? 'imperial' : 'metric')}>
          {units === 'metric' ? 'Use feet and pounds' : 'Use metres and kilograms'}
        </button>
        <button type="button" className="plain small" onClick={() => setLight(light === 'day' ? 'dark' : 'day')}>
          {light === 'day' ? 'For bad light' : 'For daylight'}
        </button>
      </div>
      <nav aria-label="Main">
        <NavLink to="/" end>
          Today
        </NavLink>
        <NavLink to="/tours">Tours</NavLink>
        <NavLink to="/register">Register</NavLink>
        <NavLink to="/fleet">Fleet</NavLink>
        <NavLink to="/dates">Dates</NavLink>
        <NavLink to="/visits">Visits</NavLink>
        <NavLink to="/import">Import</NavLink>
        <NavLink to="/people">People</NavLink>
        {me.role !== 'warehouse' && <NavLink to="/log">Log</NavLink>}
        {me.role === 'system' && <NavLink to="/house">House</NavLink>}
      </nav>
    </header>
  );
}
