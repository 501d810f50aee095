import { readRemembered } from './remembered.ts';

const answerMs = 2_000;

/**
 * A new address of the browser host that already runs on this ledger, if one does, else null. The remembered file is the
 * authority: only the user who runs the host can read it.
 */
export async function askRunningHost(rememberedFile: string): Promise<string | null> {
  const remembered = readRemembered(rememberedFile);
  if (remembered === null) return null;
  const { port, base, control } = remembered;
  try {
    const answer = await fetch(`http://127.0.0.1:${port}/${base}/address`, {
      method: 'POST',
      headers: { authorization: `Bearer ${control}` },
      redirect: 'error',
      signal: AbortSignal.timeout(answerMs),
    });
    const address = await answer.text();
    return answer.ok && address.startsWith(`http://127.0.0.1:${port}/${base}/?key=`) ? address : null;
  } catch {
    return null;
  }
}
