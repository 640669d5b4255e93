import swcJest from '@swc/jest';

/** Looked up once a module: in the sandbox of a test each look at a global is a call, and loops of the engines look at these a billion times. */
const looked = ['Math', 'Number', 'Object', 'Array', 'Map', 'Set', 'JSON'];

/** As @swc/jest, with the globals above as constants of the module. They stand on its first line, so that lines stay as they are. */
export default {
  createTransformer(options) {
    const swc = swcJest.createTransformer(options);
    const withGlobals = (source) => {
      const names = looked.filter((name) => new RegExp(`\\b${name}\\b[.(<]`).test(source));
      return names.length === 0 ? source : `const { ${names.join(', ')} } = globalThis; ${source}`;
    };
    return {
      ...swc,
      process: (source, ...rest) => swc.process(withGlobals(source), ...rest),
      processAsync: (source, ...rest) => swc.processAsync(withGlobals(source), ...rest),
      getCacheKey: (source, ...rest) => swc.getCacheKey(withGlobals(source), ...rest),
    };
  },
};
