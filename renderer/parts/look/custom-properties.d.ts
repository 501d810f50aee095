import 'react';

declare module 'react' {
  /** Custom properties of CSS may be set in `style`; React sets them through the object model, as the policy asks. */
  interface CSSProperties {
    [name: `--${string}`]: string | number | undefined;
  }
}
