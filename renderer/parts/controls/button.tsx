import type { ComponentProps, ReactNode } from 'react';
import { Link } from 'wouter';
import { classNames } from '../look/class-names.ts';
import styles from './button.module.css';

interface ButtonProps extends ComponentProps<'button'> {
  /** `main` is the one deed that a screen is for; `quiet` has no frame. */
  readonly weight?: 'main' | 'plain' | 'quiet' | undefined;
  /** For floor screens: fills its place, tall enough for a thumb in a hurry. */
  readonly large?: boolean | undefined;
  /** Shows that the deed is under way; the button keeps its width and does not answer. */
  readonly busy?: boolean | undefined;
}

export function Button({ weight = 'plain', large, busy, className, children, onClick, type, ...rest }: ButtonProps) {
  return (
    <button
      {...rest}
      type={type ?? 'button'}
      className={classNames(styles.button, styles[weight], large && styles.large, className)}
      aria-busy={busy || undefined}
      aria-disabled={busy || rest['aria-disabled']}
      onClick={busy ? (event) => event.preventDefault() : onClick}
    >
      {children}
    </button>
  );
}

interface IconButtonProps extends Omit<ComponentProps<'button'>, 'children'> {
  /** What it does, for the screen reader and as a hint. */
  readonly label: string;
  readonly children: ReactNode;
}

/** A button that shows a sign instead of words. */
export function IconButton({ label, className, children, ...rest }: IconButtonProps) {
  return (
    <button
      type="button"
      {...rest}
      className={classNames(styles.button, styles.quiet, styles.icon, className)}
      aria-label={label}
      title={label}
    >
      {children}
    </button>
  );
}

interface LinkButtonProps {
  /** A place in the program, as wouter reads it: within the area, or from the top with `~/`. */
  readonly href: string;
  readonly weight?: ButtonProps['weight'];
  readonly large?: boolean;
  readonly children: ReactNode;
}

/** Looks like a button and goes to a place: a link, so that it can be opened, copied and gone back from. */
export function LinkButton({ href, weight = 'plain', large, children }: LinkButtonProps) {
  return (
    <Link href={href} className={classNames(styles.button, styles[weight], large && styles.large) ?? ''}>
      {children}
    </Link>
  );
}
