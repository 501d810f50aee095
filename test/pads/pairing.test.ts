import { expect, test } from 'vitest';
import { messageMeter } from '../../main/hosts/pads/meter.ts';
import { isOwnAddress, ownAddresses } from '../../main/hosts/pads/networks.ts';
import { createPairing, mostWrong } from '../../main/hosts/pairing.ts';

function pairingAt() {
  const clock = { now: 1_700_000_000_000 };
  return { clock, pairing: createPairing(() => clock.now) };
}

test('a code is good once, however it is spelt, and not after ten minutes', () => {
  const { clock, pairing } = pairingAt();
  const { code } = pairing.newCode();
  expect(code).toMatch(/^[2-9A-HJ-NP-Z]{6}$/);
  expect(code).not.toMatch(/[01IO]/);
  expect(pairing.redeem(` ${code.slice(0, 3).toLowerCase()}-${code.slice(3)} `, 'a')).toEqual({ outcome: 'good' });
  expect(pairing.redeem(code, 'a')).toEqual({ outcome: 'wrong' });
  const late = pairing.newCode();
  clock.now = late.expiresAt;
  expect(pairing.redeem(late.code, 'b')).toEqual({ outcome: 'wrong' });
});

test('an address that is wrong five times waits a minute, then twice as long each time, and a good code is not looked at', () => {
  const { clock, pairing } = pairingAt();
  for (const minutes of [1, 2, 4]) {
    for (let wrong = 0; wrong < 5; wrong += 1) expect(pairing.redeem('AAAAAA', 'a').outcome).toBe('wrong');
    const { code } = pairing.newCode();
    expect(pairing.redeem(code, 'a')).toEqual({ outcome: 'wait', waitMs: minutes * 60_000 });
    expect(pairing.redeem(code, 'b')).toEqual({ outcome: 'good' });
    clock.now += minutes * 60_000;
  }
  expect(pairing.redeem(pairing.newCode().code, 'a')).toEqual({ outcome: 'good' });
});

test('many addresses that guess burn every code that is out; a new one works', () => {
  const { pairing } = pairingAt();
  const { code } = pairing.newCode();
  for (let wrong = 0; wrong < mostWrong; wrong += 1) pairing.redeem('AAAAAA', `address ${wrong}`);
  expect(pairing.guessed()).toBe(true);
  expect(pairing.redeem(code, 'honest')).toEqual({ outcome: 'wrong' });
  const fresh = pairing.newCode();
  expect(pairing.guessed()).toBe(false);
  expect(pairing.redeem(fresh.code, 'honest')).toEqual({ outcome: 'good' });
});

test('codes do not repeat, and closing makes all worthless', () => {
  const { pairing } = pairingAt();
  const codes = Array.from({ length: 64 }, () => pairing.newCode().code);
  expect(new Set(codes).size).toBe(64);
  pairing.clear();
  expect(pairing.redeem(codes[0] ?? '', 'a')).toEqual({ outcome: 'wrong' });
});

test('a meter lets a burst through and then a steady rate', () => {
  const meter = messageMeter(3, 2);
  expect([0, 0, 0, 0].map((now) => meter(now))).toEqual([true, true, true, false]);
  expect(meter(400)).toBe(false);
  expect(meter(2_000)).toBe(true);
});

test('the addresses offered are those of networks, private ones first', () => {
  const one = (address: string, internal = false) => ({
    address,
    family: 'IPv4' as const,
    internal,
    netmask: '255.255.255.0',
    mac: '00:00:00:00:00:00',
    cidr: null,
  });
  const interfaces = {
    lo: [one('127.0.0.1', true)],
    usb: [one('169.254.3.4')],
    wan: [one('203.0.113.7')],
    wifi: [one('192.168.1.20')],
    odd: [one('172.32.0.1'), one('172.31.0.1')],
  };
  expect(ownAddresses(interfaces).map(({ address }) => address)).toEqual([
    '192.168.1.20',
    '172.31.0.1',
    '203.0.113.7',
    '172.32.0.1',
    '169.254.3.4',
  ]);
  expect(isOwnAddress('192.168.1.20', interfaces)).toBe(true);
  expect(isOwnAddress('127.0.0.1', interfaces)).toBe(true);
  expect(isOwnAddress('192.168.1.21', interfaces)).toBe(false);
});
