/** What the page may load and run: its own files and what it makes itself, nothing inline. */
const DIRECTIVES = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
] as const;

/** The content security policy (W3C CSP Level 3) as the built page states it of itself. */
export const PAGE_POLICY = DIRECTIVES.join('; ');

/** The same as a header, which also binds the workers and keeps the page out of foreign frames. */
export const SERVED_POLICY = `${PAGE_POLICY}; frame-ancestors 'none'`;
