/**
 * The site's Content-Security-Policy, the same in every page's meta and in the
 * headers file. Scripts and styles are files of our own; nothing is inline but the style of pages people
 * come to first (`build/inline-styles.ts`), each allowed by its hash, which pins every byte of it.
 * `blob:` and `data:` images are the camera's picture and drawn codes. Text becomes markup
 * by the policy `templates` alone (`client/templates.ts`), and the one worker is started by
 * the policy `worker` (`offline/registration.ts`).
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
  "require-trusted-types-for 'script'",
  'trusted-types templates worker',
].join('; ');

/** A text with the policy in it, which then allows styles of these hashes. */
export const withStyle = (text: string, hashes: Iterable<string>): string =>
  text.replace("style-src 'self'", (own) => [own, ...hashes].join(' '));

/** A meta element cannot say who may frame the page; a header can. */
const headerPolicy = (frames: readonly string[], styles: Iterable<string>): string =>
  `${withStyle(policy, styles)}; frame-ancestors ${frames.length > 0 ? frames.join(' ') : "'none'"}`;

const permissions = (camera: string): string =>
  `Permissions-Policy: camera=${camera}, microphone=(), geolocation=()`;

/**
 * The site's headers in the plain format static hosts share. Where two blocks give the same
 * header the values are joined, and in a structured field the last value of a key counts
 * (RFC 9651, section 4.2.2).
 *
 * @param cameraPages folders that read codes with the camera, `/preview/`
 * @param recalls what copies on devices ask for anew each time, `/recall.json`
 * @param frames origins of sites that may show this one in a frame
 * @param styles hashes of the styles that stand in pages, as a policy says them
 */
export function headersFile(
  cameraPages: readonly string[],
  recalls: readonly string[],
  frames: readonly string[] = [],
  styles: Iterable<string> = [],
): string {
  const cameras = cameraPages.map((path) => `${path}*\n  ${permissions('(self)')}\n`);
  return `/*
  Content-Security-Policy: ${headerPolicy(frames, styles)}
  Referrer-Policy: no-referrer
  X-Content-Type-Options: nosniff
  Cross-Origin-Opener-Policy: same-origin
  Cross-Origin-Resource-Policy: same-origin
  ${permissions('()')}
${cameras.join('')}/_astro/*
  Cache-Control: public, max-age=31536000, immutable
${recalls.map((path) => `${path}\n  Cache-Control: no-store\n`).join('')}`;
}
