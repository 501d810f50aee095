/** Says a few words, dropping what was still being said: a late count is worse than none. */
export function speak(text: string, language: string): void {
  if (text === '' || typeof speechSynthesis === 'undefined') return;
  speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(text);
  words.lang = language;
  words.rate = 1.25;
  speechSynthesis.speak(words);
}

export function canSpeak(): boolean {
  return typeof speechSynthesis !== 'undefined';
}
