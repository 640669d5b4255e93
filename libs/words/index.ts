/** Codes into sentences, one folder a language. Nothing reads a sentence back: what decides reads codes and figures. */
export { english } from './english/index.js';
export * from './table/index.js';
