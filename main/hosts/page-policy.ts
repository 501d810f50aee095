/** What the screens may load and do, the same in both hosts. Nothing comes from anywhere but the program itself. */

/**
 * The content security policy of the screens.
 * @param socketOrigin `ws://host:port` of the host's own WebSocket; none in the desktop window
 */
function contentSecurityPolicy(socketOrigin?: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "img-src 'self'",
    // 'self' covers WebSockets only in newer browsers, so the socket is named.
    `connect-src 'self'${socketOrigin === undefined ? '' : ` ${socketOrigin}`}`,
    "worker-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

const permissions = [
  ...['camera', 'microphone', 'geolocation', 'display-capture', 'usb', 'serial', 'hid', 'midi', 'payment'],
  ...['accelerometer', 'gyroscope', 'magnetometer', 'identity-credentials-get', 'publickey-credentials-get'],
];

/** The headers of every answer that carries a page or a part of one. */
export function pageHeaders(socketOrigin?: string): Record<string, string> {
  return {
    'content-security-policy': contentSecurityPolicy(socketOrigin),
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'cross-origin-embedder-policy': 'require-corp',
    'origin-agent-cluster': '?1',
    'permissions-policy': permissions.map((name) => `${name}=()`).join(', '),
  };
}
