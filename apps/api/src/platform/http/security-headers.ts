import type { RequestHandler } from 'express';
import helmet from 'helmet';

/**
 * Headers that tell browsers what these pages never do. No inline script, no inline style element or attribute, no frame, nothing from elsewhere;
 * pictures and fonts may also stand in the style sheet as data. `staysOnTls`: browsers are told to stay on TLS, for every port of this name; a house that
 * is reached by plain HTTP, or is some days, may not say so.
 */
export function securityHeaders({ overTls, staysOnTls }: { readonly overTls: boolean; readonly staysOnTls: boolean }): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        'default-src': ["'self'"],
        // The decoder of codes that a camera sees is compiled WebAssembly of this house.
        'script-src': ["'self'", "'wasm-unsafe-eval'"],
        'script-src-attr': ["'none'"],
        'style-src': ["'self'"],
        'img-src': ["'self'", 'data:', 'blob:'],
        'font-src': ["'self'", 'data:'],
        'connect-src': ["'self'"],
        'object-src': ["'none'"],
        'base-uri': ["'none'"],
        'form-action': ["'self'"],
        'frame-ancestors': ["'none'"],
        ...(overTls && { 'upgrade-insecure-requests': [] }),
      },
    },
    strictTransportSecurity: staysOnTls ? { maxAge: 31_536_000 } : false,
    // A browser heeds this one on trustworthy origins only and warns on the others.
    crossOriginOpenerPolicy: overTls,
    originAgentCluster: overTls,
    referrerPolicy: { policy: 'same-origin' },
    xFrameOptions: { action: 'deny' },
  });
}
