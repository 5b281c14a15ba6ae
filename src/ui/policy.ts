/**
 * The site's Content-Security-Policy, the same in every page's meta and in the
 * headers file. Scripts and styles are files of our own; nothing is inline.
 * `blob:` and `data:` images are the camera's picture and drawn codes.
 */
export const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');
