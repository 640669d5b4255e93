import './platform/no-code-from-text.js';

// Apart, so that the rules of the page hold before anything else runs: files that screens share run before the file that asks for them.
void import('./start.js');
