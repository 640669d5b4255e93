import { useQueries, useQuery } from '@tanstack/react-query';
import type { ToldFinding, PicksResult, TruckResultOne } from '#pack-plan';
import { request } from '../../platform/request.js';
import {
  cartsQuery,
  dueQuery,
  findingsQuery,
  hangQuery,
  hardwareQuery,
  picksQuery,
  progressQuery,
  truckHeadQuery,
  truckQuery,
  wholePlanQuery,
} from './operations.js';

/** What stands in a plan never changes under its id: a draft planned again has another. */
const part = <T>(id: string, name: readonly string[], queryFn: () => Promise<T>) => ({
  queryKey: ['plan', id, ...name],
  queryFn,
  staleTime: 'static' as const,
});

export const useFindings = (id: string) =>
  useQuery(part(id, ['findings'], async () => (await request(findingsQuery, { id })).plan.findings as readonly ToldFinding[]));
export const useCarts = (id: string) => useQuery(part(id, ['carts'], async () => (await request(cartsQuery, { id })).plan.carts));
export const useHardware = (id: string | undefined) =>
  useQuery({
    ...part(id ?? '', ['hardware'], async () => (await request(hardwareQuery, { id: id ?? '' })).plan.hardware),
    enabled: id !== undefined,
  });
export const useDue = (id: string) => useQuery(part(id, ['due'], async () => (await request(dueQuery, { id })).plan.due));
export const useTruckHead = (id: string) =>
  useQuery(part(id, ['truck head'], async () => (await request(truckHeadQuery, { id })).plan.truckHead));
export const useWholePlan = (id: string | undefined) =>
  useQuery({
    ...part(id ?? '', ['whole'], async () => (await request(wholePlanQuery, { id: id ?? '' })).plan.plan),
    enabled: id !== undefined,
  });

const hangPart = (id: string, hang: string) => part(id, ['hang', hang], async () => (await request(hangQuery, { id, hang })).plan.hang);
const picksPart = (id: string) => part(id, ['picks'], async () => (await request(picksQuery, { id })).plan.picks);
const truckPart = (id: string, truck: string) =>
  part(id, ['truck', truck], async () => (await request(truckQuery, { id, truck })).plan.truck);

/** One hang with what holds for all. */
export function useHang(id: string, name: string) {
  const [hang, picks] = useQueries({ queries: [hangPart(id, name), picksPart(id)] });
  const data = hang.data && picks.data ? { hang: hang.data, picks: picks.data } : undefined;
  return { data, isError: hang.isError || picks.isError, error: hang.error ?? picks.error };
}

/** All hangs of a plan, for what shows them together. */
export function usePicks(id: string, names: readonly string[]) {
  const head = useQuery(picksPart(id));
  const hangs = useQueries({ queries: names.map((name) => hangPart(id, name)) });
  const all = hangs.flatMap(({ data }) => (data ? [data] : []));
  const data: PicksResult | undefined = head.data && all.length === names.length ? { ...head.data, hangs: all } : undefined;
  const failed = [head, ...hangs].find((each) => each.isError);
  return { data, isError: failed !== undefined, error: failed?.error ?? null };
}

export const useTruck = (id: string, truck: string) => useQuery(truckPart(id, truck));

/** All trucks of a plan. */
export function useTrucks(id: string, names: readonly string[]) {
  const trucks = useQueries({ queries: names.map((name) => truckPart(id, name)) });
  const all = trucks.flatMap(({ data }) => (data ? [data] : []));
  const failed = trucks.find((each) => each.isError);
  const data: readonly TruckResultOne[] | undefined = all.length === names.length ? all : undefined;
  return { data, isError: failed !== undefined, error: failed?.error ?? null };
}

/** What was ticked and which carts were read: the part of a plan that changes while people work. */
export const useProgress = (id: string) =>
  useQuery({ queryKey: ['progress', id], queryFn: async () => (await request(progressQuery, { id })).plan });
