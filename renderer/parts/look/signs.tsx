import type { ReactNode } from 'react';

/** The few signs of the program, drawn as strokes in the colour of the text. */
function Sign({ children, filled }: { children: ReactNode; filled?: boolean }) {
  return (
    <svg
      viewBox="0 0 24 24"
      width="24"
      height="24"
      aria-hidden="true"
      fill={filled ? 'currentColor' : 'none'}
      stroke={filled ? 'none' : 'currentColor'}
      strokeWidth="2"
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      {children}
    </svg>
  );
}

/** A weight on a line: the program's own sign. */
export function PlumbBob() {
  return (
    <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
      <path d="M12 1v13" stroke="currentColor" strokeWidth="1.75" strokeLinecap="round" />
      <path d="M7.5 13.5h9v2.4L12 22.5l-4.5-6.6z" fill="var(--counted)" />
    </svg>
  );
}

export function Cross() {
  return (
    <Sign>
      <path d="M6 6l12 12M18 6L6 18" />
    </Sign>
  );
}

export function Cog() {
  return (
    <Sign>
      <path d="M4 7h9M17 7h3M4 17h3M11 17h9" />
      <circle cx="15" cy="7" r="2" />
      <circle cx="9" cy="17" r="2" />
    </Sign>
  );
}

export function Question() {
  return (
    <Sign>
      <path d="M8.5 9a3.5 3.5 0 1 1 5 3.2c-1 .5-1.5 1.1-1.5 2.3" />
      <circle cx="12" cy="18.5" r="0.6" fill="currentColor" />
    </Sign>
  );
}

export function Lines() {
  return (
    <Sign>
      <path d="M4 7h16M4 12h16M4 17h16" />
    </Sign>
  );
}

export function ArrowLeft() {
  return (
    <Sign>
      <path d="M19 12H5M11 6l-6 6 6 6" />
    </Sign>
  );
}
