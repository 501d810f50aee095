export function findForbiddenArrows(): string[] {
  return [];
}
