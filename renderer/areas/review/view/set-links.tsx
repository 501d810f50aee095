import { Link } from 'wouter';
import { setPlace } from '../address/places.ts';
import styles from './set-links.module.css';

/** The way to some sets, by their days. */
export function SetLinks({ sets }: { sets: readonly { readonly id: string; readonly text: string }[] }) {
  return (
    <ul className={styles.links}>
      {sets.map(({ id, text }) => (
        <li key={id}>
          <Link href={setPlace(id)}>{text}</Link>
        </li>
      ))}
    </ul>
  );
}
