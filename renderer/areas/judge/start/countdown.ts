/** Whole seconds still shown `elapsed` milliseconds into a countdown: 10, 9, … 1, and 0 once it is over. */
export function secondsLeft(totalSeconds: number, elapsed: number): number {
  return Math.max(0, Math.ceil(totalSeconds - Math.max(0, elapsed) / 1000));
}

/** Whether the second that begins is heard: the last five are, and before them every fifth. */
export function ticks(second: number): boolean {
  return second > 0 && (second <= 5 || second % 5 === 0);
}
