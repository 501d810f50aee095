import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { classNames } from '../look/class-names.ts';
import { useWords } from '../words/words.tsx';
import styles from './combo-box.module.css';
import { Field } from './field.tsx';
import { type ComboOption, findOptions } from './find-options.ts';

interface ComboBoxProps {
  readonly label: string;
  readonly hint?: string;
  readonly error?: string | undefined;
  readonly options: readonly ComboOption[];
  /** The chosen option's id. */
  readonly value: string | null;
  readonly onChange: (id: string | null) => void;
  /** Offers to make a new option of what is typed: the offer's words, and the deed. */
  readonly add?: { readonly words: (text: string) => string; readonly onAdd: (text: string) => void };
  readonly autoFocus?: boolean;
}

/** More than these are not drawn at once; typing narrows them. */
const mostShown = 50;

/** Type to find, arrows to choose, Enter to take (the combobox pattern of the ARIA Authoring Practices, with a list). */
export function ComboBox({ label, hint, error, options, value, onChange, add, autoFocus }: ComboBoxProps) {
  const words = useWords().common;
  const listId = useId();
  const list = useRef<HTMLDivElement>(null);
  const [text, setText] = useState<string | null>(null);
  const [active, setActive] = useState(0);
  const open = text !== null;
  const chosen = options.find((option) => option.id === value);
  const typed = text ?? '';
  const found = findOptions(options, typed === chosen?.label ? '' : typed).slice(0, mostShown);
  const offer = add !== undefined && typed.trim() !== '' && !options.some((item) => item.label === typed.trim());
  const count = found.length + (offer ? 1 : 0);
  const place = Math.min(active, Math.max(0, count - 1));

  // biome-ignore lint/correctness/useExhaustiveDependencies: scrolls when the active option changes, not what it reads.
  useEffect(() => {
    list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  }, [place, open]);

  const close = (): void => {
    setText(null);
    setActive(0);
  };
  const take = (index: number): void => {
    const option = found[index];
    if (option !== undefined) onChange(option.id);
    else if (offer) add.onAdd(typed.trim());
    close();
  };
  const start = (): void => {
    setText(chosen?.label ?? '');
    setActive(
      Math.max(
        0,
        options.findIndex((option) => option.id === value),
      ),
    );
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.nativeEvent.isComposing) return;
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      if (!open) start();
      else if (count > 0) setActive((place + (event.key === 'ArrowDown' ? 1 : count - 1)) % count);
    } else if (event.key === 'Enter' && open && count > 0) {
      event.preventDefault();
      take(place);
    } else if (event.key === 'Escape' && open) {
      event.preventDefault();
      event.stopPropagation();
      close();
    }
  };
  const item = (index: number, content: React.ReactNode, key: string) => (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the field has the focus and the keys; the list follows it.
    // biome-ignore lint/a11y/useFocusableInteractive: the field points at it by aria-activedescendant instead.
    <div
      key={key}
      id={`${listId}-${index}`}
      role="option"
      aria-selected={index === place}
      className={classNames(styles.option, index === place && styles.active)}
      onPointerDown={(event) => event.preventDefault()}
      onClick={() => take(index)}
    >
      {content}
    </div>
  );
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <div className={styles.box}>
          <input
            {...ids}
            type="text"
            role="combobox"
            dir="auto"
            autoComplete="off"
            spellCheck={false}
            // biome-ignore lint/a11y/noAutofocus: only a form that was just asked for passes it.
            autoFocus={autoFocus}
            aria-expanded={open}
            aria-controls={listId}
            aria-autocomplete="list"
            aria-activedescendant={open && count > 0 ? `${listId}-${place}` : undefined}
            className={styles.input}
            value={text ?? chosen?.label ?? ''}
            onClick={() => (open ? undefined : start())}
            onFocus={(event) => event.target.select()}
            onBlur={close}
            onKeyDown={onKeyDown}
            onChange={(event) => {
              setText(event.target.value);
              setActive(0);
              if (event.target.value === '') onChange(null);
            }}
          />
          <div
            ref={list}
            id={listId}
            role="listbox"
            aria-label={label}
            className={styles.list}
            hidden={!open || count === 0}
          >
            {open
              ? found.map((option, index) =>
                  item(
                    index,
                    <>
                      <bdi>{option.label}</bdi>
                      {option.detail === undefined ? null : <bdi className={styles.detail}>{option.detail}</bdi>}
                    </>,
                    option.id,
                  ),
                )
              : null}
            {open && offer ? item(found.length, <bdi>{add.words(typed.trim())}</bdi>, 'add') : null}
          </div>
          {open && count === 0 ? <p className={styles.none}>{words.noMatch}</p> : null}
        </div>
      )}
    </Field>
  );
}
