/** What a page of ours may load: nothing but itself. */

/** Directives that also work inside a page's meta element; renderer/index.html repeats them, and a test compares. */
export const pagePolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Headers sent with every answer, by the loopback host and by the program's own scheme. */
export const securityHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': `${pagePolicy}; frame-ancestors 'none'`,
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};
