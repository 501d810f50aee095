import { type KeyboardEvent, useId, useState } from 'react';
import { Cross } from '../look/signs.tsx';
import { useWords } from '../words/words.tsx';
import { Field } from './field.tsx';
import styles from './tag-input.module.css';

interface TagInputProps {
  readonly label: string;
  readonly hint?: string;
  readonly tags: readonly string[];
  readonly onChange: (tags: string[]) => void;
  /** Tags used before, offered while typing. */
  readonly known?: readonly string[];
  readonly most?: number;
  readonly optional?: boolean;
}

const longest = 40;

/**
 * The list with one more tag, trimmed and never twice; the same list where nothing is to be added.
 * @internal exported for its test, which asks it directly
 */
export function withTag(tags: readonly string[], text: string, most: number): readonly string[] {
  const tag = text.trim().slice(0, longest).trim();
  const known = tags.some((item) => item.toLocaleLowerCase() === tag.toLocaleLowerCase());
  return tag === '' || known || tags.length >= most ? tags : [...tags, tag];
}

/** Free words: Enter or a comma adds what is typed, Backspace in an empty field removes the last. */
export function TagInput({ label, hint, tags, onChange, known = [], most = 12, optional }: TagInputProps) {
  const words = useWords().common;
  const [text, setText] = useState('');
  const listId = useId();
  const add = (): void => {
    const next = withTag(tags, text, most);
    if (next !== tags) onChange([...next]);
    setText('');
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.nativeEvent.isComposing) return;
    if ((event.key === 'Enter' || event.key === ',') && text.trim() !== '') {
      event.preventDefault();
      add();
    } else if (event.key === 'Backspace' && text === '' && tags.length > 0) {
      onChange(tags.slice(0, -1));
    }
  };
  return (
    <Field label={label} hint={hint ?? words.tagHint} optional={optional ?? false}>
      {(ids) => (
        <div className={styles.box}>
          {tags.map((tag) => (
            <span key={tag} className={styles.tag}>
              <bdi>{tag}</bdi>
              <button
                type="button"
                aria-label={words.removeTag(tag)}
                onClick={() => onChange(tags.filter((item) => item !== tag))}
              >
                <Cross />
              </button>
            </span>
          ))}
          <input
            {...ids}
            type="text"
            dir="auto"
            autoComplete="off"
            maxLength={longest}
            list={listId}
            value={text}
            onChange={(event) => setText(event.target.value)}
            onKeyDown={onKeyDown}
            onBlur={add}
          />
          <datalist id={listId}>
            {known
              .filter((tag) => !tags.includes(tag))
              .map((tag) => (
                <option key={tag} value={tag} />
              ))}
          </datalist>
        </div>
      )}
    </Field>
  );
}
