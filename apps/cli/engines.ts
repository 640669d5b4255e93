import type { EngineCall } from './engine/engine-call.js';

/** Engine name -> its call, loaded only when asked for. */
export const engines: Record<string, () => Promise<EngineCall>> = {
  'hang-statics': async () => (await import('./engine/hang-statics.js')).answer,
  'cart-allocation': async () => (await import('./engine/cart-allocation.js')).engine(),
  'truck-pack': async () => (await import('./engine/truck-pack.js')).answer,
  examinations: async () => (await import('./engine/examinations.js')).engine(),
  spares: async () => (await import('./engine/spares.js')).answer,
};
