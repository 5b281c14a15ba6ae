import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { APIRoute } from 'astro';
import { content, firm } from '../content/load.ts';

/** The firm's logo under its own name. */
export const getStaticPaths = () => {
  const { logo } = firm();
  return logo === undefined ? [] : [{ params: { logo } }];
};

export const GET: APIRoute = ({ params: { logo = '' } }) =>
  new Response(new Uint8Array(readFileSync(join(content().root, logo))), {
    headers: { 'Content-Type': logo.endsWith('.svg') ? 'image/svg+xml' : 'image/png' },
  });
