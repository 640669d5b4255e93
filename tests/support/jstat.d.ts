declare module 'jstat' {
  interface Cumulative<Parameters extends readonly number[]> {
    cdf(x: number, ...parameters: Parameters): number;
  }
  const statistics: { jStat: { poisson: Cumulative<[mean: number]>; negbin: Cumulative<[shape: number, p: number]> } };
  export default statistics;
}
