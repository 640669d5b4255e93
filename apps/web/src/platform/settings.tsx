import { type ReactNode, createContext, useContext, useEffect, useState } from 'react';
import type { Units } from '#drawings';

interface Settings {
  readonly units: Units;
  readonly light: 'day' | 'dark';
  readonly setUnits: (units: Units) => void;
  readonly setLight: (light: 'day' | 'dark') => void;
}

const Context = createContext<Settings | null>(null);

/** Units and light of this screen, kept in this browser. */
export function SettingsProvider({ children }: { children: ReactNode }) {
  const [units, setUnits] = useState<Units>(() => (localStorage.getItem('units') === 'imperial' ? 'imperial' : 'metric'));
  const [light, setLight] = useState<'day' | 'dark'>(() => (localStorage.getItem('light') === 'dark' ? 'dark' : 'day'));
  useEffect(() => {
    localStorage.setItem('units', units);
    localStorage.setItem('light', light);
    document.documentElement.dataset.light = light;
  }, [units, light]);
  return <Context.Provider value={{ units, light, setUnits, setLight }}>{children}</Context.Provider>;
}

export function useSettings(): Settings {
  const settings = useContext(Context);
  if (!settings) throw new Error('no settings around this component');
  return settings;
}
