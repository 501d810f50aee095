export function findBrokenHabits(): string[] {
  return [];
}
