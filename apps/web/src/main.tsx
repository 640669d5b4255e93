import './platform/no-code-from-text.js';
import '@fontsource-variable/atkinson-hyperlegible-next';
import '@fontsource-variable/atkinson-hyperlegible-mono';
import './app/style.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { BrowserRouter } from 'react-router';
import { drawingStyle, sheetStyle } from '#drawings';
import { App } from './app/app.js';
import { Refused } from './platform/request.js';
import { keepLastRead } from './platform/saved-cache.js';
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
keepLastRead(client);

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <QueryClientProvider client={client}>
      <SettingsProvider>
        <BrowserRouter>
          <App />
        </BrowserRouter>
      </SettingsProvider>
    </QueryClientProvider>
  </StrictMode>,
);
