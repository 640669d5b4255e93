import { type ReactNode, createContext, useContext, useEffect, useState } from 'react';
import { useLocation } from 'react-router';
import type { Units } from '#drawings';

type Light = 'day' | 'dark';
type Place = 'desk' | 'floor';

interface Settings {
  readonly units: Units;
  readonly light: Light;
  readonly setUnits: (units: Units) => void;
  readonly setLight: (light: Light) => void;
}

const Context = createContext<Settings | null>(null);

/** At the desk it is day until somebody says otherwise, on the floor it is dark. */
const lightKeys = { desk: 'light', floor: 'floor-light' } as const;
const keptLight = (place: Place, other: Light, unset: Light): Light => (localStorage.getItem(lightKeys[place]) === other ? other : unset);

/** Whether the screens of the floor are shown, or those of the desk. */
export const useIsOnFloor = (): boolean => useLocation().pathname.startsWith('/floor/');

/** Units and light of this screen, kept in this browser; the floor has a light of its own. */
export function SettingsProvider({ children }: { children: ReactNode }) {
  const place: Place = useIsOnFloor() ? 'floor' : 'desk';
  const [units, setUnits] = useState<Units>(() => (localStorage.getItem('units') === 'imperial' ? 'imperial' : 'metric'));
  const [lights, setLights] = useState(() => ({ desk: keptLight('desk', 'dark', 'day'), floor: keptLight('floor', 'day', 'dark') }));
  const light = lights[place];
  useEffect(() => {
    localStorage.setItem('units', units);
    localStorage.setItem(lightKeys[place], light);
    document.documentElement.dataset.light = light;
  }, [units, light, place]);
  const setLight = (next: Light) => setLights((before) => ({ ...before, [place]: next }));
  return <Context.Provider value={{ units, light, setUnits, setLight }}>{children}</Context.Provider>;
}

export function useSettings(): Settings {
  const settings = useContext(Context);
  if (!settings) throw new Error('no settings around this component');
  return settings;
}
