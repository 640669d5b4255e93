import { type ReactNode, createContext, useContext, useEffect, useState, useSyncExternalStore } from 'react';
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

/** Kept once somebody has chosen; until then the desk is as the device is, and the floor dark. */
const lightKeys = { desk: 'light', floor: 'floor-light' } as const;
const chosenLight = (place: Place): Light | undefined => {
  const kept = localStorage.getItem(lightKeys[place]);
  return kept === 'day' || kept === 'dark' ? kept : undefined;
};
const isDeviceDark = window.matchMedia('(prefers-color-scheme: dark)');
const followDevice = (changed: () => void) => {
  isDeviceDark.addEventListener('change', changed);
  return () => isDeviceDark.removeEventListener('change', changed);
};

/** Whether the screens of the floor are shown, or those of the desk. */
export const useIsOnFloor = (): boolean => useLocation().pathname.startsWith('/floor/');

/** Units and light of this screen, kept in this browser; the floor has a light of its own. */
export function SettingsProvider({ children }: { children: ReactNode }) {
  const place: Place = useIsOnFloor() ? 'floor' : 'desk';
  const [units, setUnits] = useState<Units>(() => (localStorage.getItem('units') === 'imperial' ? 'imperial' : 'metric'));
  const [chosen, setChosen] = useState(() => ({ desk: chosenLight('desk'), floor: chosenLight('floor') }));
  const deviceLight: Light = useSyncExternalStore(followDevice, () => isDeviceDark.matches) ? 'dark' : 'day';
  const light = chosen[place] ?? (place === 'floor' ? 'dark' : deviceLight);
  useEffect(() => {
    localStorage.setItem('units', units);
    document.documentElement.dataset.light = light;
  }, [units, light]);
  const setLight = (next: Light) => {
    localStorage.setItem(lightKeys[place], next);
    setChosen((before) => ({ ...before, [place]: next }));
  };
  return <Context.Provider value={{ units, light, setUnits, setLight }}>{children}</Context.Provider>;
}

export function useSettings(): Settings {
  const settings = useContext(Context);
  if (!settings) throw new Error('no settings around this component');
  return settings;
}
