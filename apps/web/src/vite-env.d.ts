/// <reference types="vite/client" />
declare module '@fontsource-variable/atkinson-hyperlegible-next';
declare module '@fontsource-variable/atkinson-hyperlegible-mono';
/** A hash of the shapes of all answers, put in by the build. */
declare const SHAPES: string;
