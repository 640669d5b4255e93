import { groupDigits } from '#kernel';

/** Figures, days and lists as English writes them. */
export const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
export const number = (value: number, decimals = 0): string => groupDigits(value, decimals);
export const kilograms = (value: number): string => `${groupDigits(value)} kg`;
export const tonnes = (value: number): string => `${(value / 1000).toFixed(1)} t`;
export const degrees = (value: number, decimals = 1): string => `${groupDigits(value, decimals)}°`;
export const percent = (share: number): string => `${Math.round(share * 100)} %`;
export const span = (from: string, to: string): string => (from === to ? `on ${from}` : `from ${from} to ${to}`);
export const boxes = (positions: readonly number[]): string =>
  positions.length === 1 ? `box ${positions[0]}` : `boxes ${positions.join(', ')}`;
export const list = (names: readonly string[]): string => names.join(', ');
