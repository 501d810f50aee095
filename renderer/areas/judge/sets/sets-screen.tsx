export function SetsScreen() {
  return null;
}
