import { useMutation, useQueryClient } from '@tanstack/react-query';
import { NavLink, useLocation } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../platform/request.js';
import { forgetLastRead } from '../platform/last-read.js';
import { useSettings } from '../platform/settings.js';
import type { Person } from '../platform/person.js';
import { roleWords } from '../features/account/role-words.js';
import { Menu } from '../ui/menu.js';

const signOut = graphql(`mutation SignOut { signOut }`);

export function Header({ me }: { me: Person }) {
  const { units, light, setUnits, setLight } = useSettings();
  const { pathname } = useLocation();
  const seldom = seldomUsed.filter(({ roles }) => roles?.includes(me.role) ?? true);
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
      <nav aria-label="Main">
        <NavLink to="/" end>
          Today
        </NavLink>
        <NavLink to="/tours">Tours</NavLink>
        <NavLink to="/register">Register</NavLink>
        <NavLink to="/fleet">Fleet</NavLink>
        <NavLink to="/dates">Dates</NavLink>
        <Menu name="More" isHere={seldom.some(({ to }) => pathname === to || pathname.startsWith(`${to}/`))}>
          {seldom.map(({ to, name }) => (
            <NavLink key={to} to={to}>
              {name}
            </NavLink>
          ))}
        </Menu>
      </nav>
      <div className="who">
        <Menu name={`${me.name}, ${roleWords[me.role] ?? me.role}${me.deputyships.length > 0 ? ', deputy' : ''}`}>
          {me.deputyships.map(({ officer, until }) => (
            <p key={`${officer} ${until}`} className="quiet">
              Deputy of {officer} until {until}
            </p>
          ))}
          <button type="button" className="plain" onClick={() => setUnits(units === 'metric' ? 'imperial' : 'metric')}>
            {units === 'metric' ? 'Use feet and pounds' : 'Use metres and kilograms'}
          </button>
          <button type="button" className="plain" onClick={() => setLight(light === 'day' ? 'dark' : 'day')}>
            {light === 'day' ? 'For bad light' : 'For daylight'}
          </button>
          <button type="button" className="plain" onClick={() => leave.mutate()}>
            Sign out
          </button>
        </Menu>
      </div>
    </header>
  );
}

/** What is looked at now and then, by role. */
const seldomUsed: readonly { readonly to: string; readonly name: string; readonly roles?: readonly string[] }[] = [
  { to: '/visits', name: 'Visits' },
  { to: '/venues', name: 'Venues' },
  { to: '/kit-of-others', name: 'Kit of others' },
  { to: '/labels', name: 'Labels' },
  { to: '/import', name: 'Import' },
  { to: '/people', name: 'People' },
  { to: '/log', name: 'Log', roles: ['safety', 'system'] },
  { to: '/house', name: 'House', roles: ['system'] },
];
