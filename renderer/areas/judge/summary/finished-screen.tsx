export function FinishedScreen(_: unknown) {
  return null;
}
