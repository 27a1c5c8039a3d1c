/** The program's sign: a flight on its root. */
export const Logo = () => (
  <svg className="logo" viewBox="0 0 32 32" role="img" aria-label="Augerwright">
    <path d="M3 16h26" className="logo-root" />
    <path d="M5 24C9 24 8 8 12 8M13 24c4 0 3-16 7-16M21 24c4 0 3-16 7-16" className="logo-flight" />
  </svg>
);
