import { expect, test } from 'vitest';
import { createSecrets } from '../../main/hosts/browser/secrets.ts';

test('a key is good once, and gives a session', () => {
  const secrets = createSecrets([]);
  const session = secrets.exchange(secrets.newKey());
  expect(secrets.isSession(session ?? undefined)).toBe(true);
  const key = secrets.newKey();
  expect(secrets.exchange(key)).not.toBeNull();
  expect(secrets.exchange(key)).toBeNull();
  expect(secrets.isSession(undefined)).toBe(false);
  expect(secrets.isSession(key)).toBe(false);
});

test('keys and sessions are long, distinct, and the oldest go first', () => {
  const secrets = createSecrets([]);
  const keys = Array.from({ length: 8 }, () => secrets.newKey());
  expect(new Set(keys).size).toBe(8);
  for (const key of keys) expect(key).toMatch(/^[A-Za-z0-9_-]{43}$/);
  expect(keys.map((key) => secrets.exchange(key) !== null)).toEqual([...Array(3).fill(false), ...Array(5).fill(true)]);

  const sessions = Array.from({ length: 52 }, () => secrets.exchange(secrets.newKey()) ?? '');
  expect(sessions.filter((session) => secrets.isSession(session))).toHaveLength(50);
  expect(secrets.isSession(sessions[51])).toBe(true);
});

test('only digests are remembered, and they are enough to know a session again', () => {
  let changes = 0;
  const before = createSecrets([], () => {
    changes += 1;
  });
  const session = before.exchange(before.newKey()) ?? '';
  expect(changes).toBe(1);
  expect(before.sessions()).not.toContain(session);
  expect(createSecrets(before.sessions()).isSession(session)).toBe(true);
});
