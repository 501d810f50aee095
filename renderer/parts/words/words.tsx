import { createContext, type ReactNode, useContext, useEffect } from 'react';
import { en } from './en.ts';
import { type Formats, formatsFor } from './formats.ts';

/** Every text that a screen shows. A further language is a function to this same type, so it cannot be incomplete. */
export type Words = ReturnType<typeof en>;

const languages = { en } satisfies Record<string, (formats: Formats) => Words>;
export type Language = keyof typeof languages;

interface Spoken {
  readonly words: Words;
  readonly formats: Formats;
}

/** The user's own regional locale where it is of this language, else the language's usual one. */
function localeOf(language: Language, wanted: readonly string[]): string {
  return wanted.find((locale) => new Intl.Locale(locale).language === language) ?? { en: 'en-GB' }[language];
}

function speak(language: Language, wanted: readonly string[]): Spoken {
  const formats = formatsFor(localeOf(language, wanted));
  return { words: languages[language](formats), formats };
}

const SpokenContext = createContext<Spoken>(speak('en', []));

export function WordsProvider({ language = 'en', children }: { language?: Language; children: ReactNode }) {
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  return <SpokenContext value={speak(language, navigator.languages)}>{children}</SpokenContext>;
}

/** The texts in the user's language. */
export function useWords(): Words {
  return useContext(SpokenContext).words;
}

/** Numbers, dates, durations, units and plurals as the user writes them. */
export function useFormats(): Formats {
  return useContext(SpokenContext).formats;
}
