// What the page may load and do, the same in the shell and in a browser. Everything is forbidden, then what the page
// needs is allowed from where it came itself.

/** The content security policy of one answer. The nonce lets accessible components add their own style element. */
export function buildPagePolicy(nonce: string): string {
  return [
    "default-src 'none'",
    // One bundle of ours; nothing inline, nothing evaluated.
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "font-src 'self'",
    // Drawn and cut pictures of the page itself.
    "img-src 'self' data: blob:",
    "media-src 'self' blob:",
    // Calls and events; nothing leaves this machine.
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    // No frames in the page, and the page in no frame.
    "frame-src 'none'",
    "frame-ancestors 'none'",
    "form-action 'none'",
    "base-uri 'none'",
    "object-src 'none'",
  ].join('; ');
}

/** Sent with every file of the page. */
export const PAGE_HEADERS: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=(), payment=()',
  'x-frame-options': 'DENY',
};
