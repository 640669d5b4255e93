export * from './embedded-database.js';
export * from './find-browser.js';
export * from './integer-program.js';
export * from './lan-certificate.js';
export * from './running-database.js';
export * from './server-keeper.js';
export * from './trouble.js';
