import { clientsClaim } from 'workbox-core';
import { cleanupOutdatedCaches, matchPrecache, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

/** What was built, put here by the build: files with a hash in their names have no revision of their own. */
declare const BUILT_FILES: { url: string; revision: string | null }[];

/** On a bad line the page that is kept comes before the patience ends, milliseconds. */
const patienceMs = 3_000;

// A new version is fetched beside the one in use and takes its place when the last page of that one is closed: no page sees files of two.
precacheAndRoute(BUILT_FILES, { directoryIndex: '' });
cleanupOutdatedCaches();
clientsClaim();

// The page itself: the house's newest wherever it answers, otherwise the one that is kept, with all its files.
registerRoute(
  new NavigationRoute(
    async ({ request }) => {
      try {
        const answer = await fetch(request, { signal: AbortSignal.timeout(patienceMs) });
        if (answer.status < 500) return answer;
      } catch {
        // Not reached.
      }
      return (await matchPrecache('/index.html')) ?? Response.error();
    },
    { denylist: [/^\/(graphql|api|healthz|readyz|metrics)(\/|$)/, /\.[a-z0-9]+$/i] },
  ),
);
