import '@fontsource-variable/atkinson-hyperlegible-next';
import '@fontsource-variable/atkinson-hyperlegible-mono';
import './app/style.css';
import { QueryClient } from '@tanstack/react-query';
import { PersistQueryClientProvider } from '@tanstack/react-query-persist-client';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { BrowserRouter } from 'react-router';
import { drawingStyle, sheetStyle } from '#drawings';
import { App } from './app/app.js';
import { Refused } from './platform/request.js';
import { lastRead } from './platform/last-read.js';
import { SettingsProvider } from './platform/settings.js';

// Adopted, not written into the page: the page's rules forbid style elements.
const style = new CSSStyleSheet();
style.replaceSync(drawingStyle + sheetStyle);
document.adoptedStyleSheets.push(style);

const client = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 10_000,
      gcTime: 24 * 3_600_000,
      retry: (count, fault) => count < 1 && !(fault instanceof Refused),
      refetchOnWindowFocus: true,
    },
  },
});
// Kept in the browser's small storage by earlier versions.
localStorage.removeItem('cartwright-last-read');

const root = document.getElementById('root');
if (!root) throw new Error('the page has no place for the screens');
createRoot(root).render(
  <StrictMode>
    <PersistQueryClientProvider
      client={client}
      persistOptions={lastRead}
      // Readable at once, and read again at once: others may have worked on since.
      onSuccess={() => client.invalidateQueries({ refetchType: 'none' })}
    >
      <BrowserRouter>
        <SettingsProvider>
          <App />
        </SettingsProvider>
      </BrowserRouter>
    </PersistQueryClientProvider>
  </StrictMode>,
);
